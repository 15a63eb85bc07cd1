import { Body, Controller, Get, HttpCode, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { CurrentActor, Needs } from '#lib/access';
import { type Actor, ApiBooking, IdempotencyKey, pageLimit } from '#lib/platform';
import { ListCharges } from '../app/list-charges.js';
import { PreviewCharges } from '../app/preview-charges.js';
import { RecordCharges } from '../app/record-charges.js';
import {
  ChargePageDto,
  ChargeQueryDto,
  ChargesDto,
  ChargesPreviewDto,
  NewChargesDto,
} from './charge.dto.js';

@ApiTags('charges')
@Controller('charges')
export class ChargesController {
  constructor(
    private readonly listCharges: ListCharges,
    private readonly previewCharges: PreviewCharges,
    private readonly recordCharges: RecordCharges,
  ) {}

  @Get()
  @Needs('pricing.read')
  @ApiOperation({
    operationId: 'listCharges',
    summary: 'What was asked for restorations and who pays it, the latest record first',
  })
  @ApiOkResponse({ type: ChargePageDto })
  async list(@CurrentActor() actor: Actor, @Query() query: ChargeQueryDto): Promise<ChargePageDto> {
    return this.listCharges.run(actor, { ...query, limit: pageLimit(query) });
  }

  @Post('preview')
  @HttpCode(200)
  @Needs('pricing.read')
  @ApiOperation({
    operationId: 'previewCharges',
    summary: 'Who would pay what for restorations of a visit; nothing is written',
  })
  @ApiOkResponse({ type: ChargesPreviewDto })
  async preview(
    @CurrentActor() actor: Actor,
    @Body() body: NewChargesDto,
  ): Promise<ChargesPreviewDto> {
    return this.previewCharges.run(actor, body);
  }

  @Post()
  @Needs('charges.record')
  @ApiBooking()
  @ApiOperation({
    operationId: 'recordCharges',
    summary: 'Record what was asked for restorations of a visit, and who pays it',
  })
  @ApiCreatedResponse({ type: ChargesDto })
  async record(
    @CurrentActor() actor: Actor,
    @IdempotencyKey() key: string,
    @Body() body: NewChargesDto,
  ): Promise<ChargesDto> {
    return this.recordCharges.run(actor, key, body);
  }
}
