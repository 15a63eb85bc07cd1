import { Body, Controller, Get, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { CurrentActor, Needs } from '#lib/access';
import { type Actor, ApiBooking, IdempotencyKey, pageLimit } from '#lib/platform';
import { ListBalances } from '../app/list-balances.js';
import { RecordBalance } from '../app/record-balance.js';
import { BalanceDto, BalancePageDto, BalanceQueryDto, NewBalanceDto } from './balance.dto.js';

@ApiTags('fees and plans')
@Controller('plan-balances')
export class BalancesController {
  constructor(
    private readonly listBalances: ListBalances,
    private readonly recordBalance: RecordBalance,
  ) {}

  @Get()
  @Needs('pricing.read')
  @ApiOperation({
    operationId: 'listPlanBalances',
    summary: 'What was entered as left of deductible and maximum, the latest day first',
    description: 'The latest day counts; of two of one day the one that was entered later.',
  })
  @ApiOkResponse({ type: BalancePageDto })
  async list(
    @CurrentActor() actor: Actor,
    @Query() query: BalanceQueryDto,
  ): Promise<BalancePageDto> {
    return this.listBalances.run(actor, { ...query, limit: pageLimit(query) });
  }

  @Post()
  @Needs('balances.write')
  @ApiBooking()
  @ApiOperation({
    operationId: 'recordPlanBalance',
    summary: 'Enter what is left of a patient’s deductible and maximum as of a day',
  })
  @ApiCreatedResponse({ type: BalanceDto })
  async record(
    @CurrentActor() actor: Actor,
    @IdempotencyKey() key: string,
    @Body() body: NewBalanceDto,
  ): Promise<BalanceDto> {
    return this.recordBalance.run(actor, key, body);
  }
}
