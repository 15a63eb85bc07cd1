import { Body, Controller, Get, Post } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { CurrentActor, Needs } from '#lib/access';
import type { Actor } from '#lib/platform';
import { CreateCostRate } from '../app/create-cost-rate.js';
import { ListCostRates } from '../app/list-cost-rates.js';
import { CostRateDto, CostRatesDto, NewCostRateDto } from './cost-rate.dto.js';

@ApiTags('reports')
@Controller('cost-rates')
export class CostRatesController {
  constructor(
    private readonly listRates: ListCostRates,
    private readonly createRate: CreateCostRate,
  ) {}

  @Get()
  @Needs('costs.read')
  @ApiOperation({ operationId: 'listCostRates', summary: 'What a minute of chair costs, by date' })
  @ApiOkResponse({ type: CostRatesDto })
  async list(@CurrentActor() actor: Actor): Promise<CostRatesDto> {
    return this.listRates.run(actor);
  }

  @Post()
  @Needs('practice.manage')
  @ApiOperation({
    operationId: 'createCostRate',
    summary: 'Enter the cost and the practical capacity of the chairs from a day on',
  })
  @ApiCreatedResponse({ type: CostRateDto })
  async create(@CurrentActor() actor: Actor, @Body() body: NewCostRateDto): Promise<CostRateDto> {
    return this.createRate.run(actor, body);
  }
}
