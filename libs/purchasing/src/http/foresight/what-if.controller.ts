import { Body, Controller, Get, HttpCode, Post, Query } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { CurrentActor, Needs } from '#lib/access';
import type { Actor } from '#lib/platform';
import { BulkWhatIf } from '../../queries/foresight/bulk-what-if.js';
import { ServiceWhatIf } from '../../queries/foresight/service-what-if.js';
import { BulkAnswerDto, BulkQuestionDto, ServiceCurveDto, ServiceQueryDto } from './what-if.dto.js';

@ApiTags('reorder')
@Controller('reorder/what-if')
export class WhatIfController {
  constructor(
    private readonly serviceWhatIf: ServiceWhatIf,
    private readonly bulkWhatIf: BulkWhatIf,
  ) {}

  @Get('service')
  @Needs('costs.read')
  @ApiOperation({
    operationId: 'whatIfService',
    summary: 'What more or less service costs in stock and expected waste',
  })
  @ApiOkResponse({ type: ServiceCurveDto })
  async service(
    @CurrentActor() actor: Actor,
    @Query() query: ServiceQueryDto,
  ): Promise<ServiceCurveDto> {
    return this.serviceWhatIf.run(actor, query.consumableId ?? null);
  }

  @Post('bulk')
  @HttpCode(200)
  @Needs('costs.read')
  @ApiOperation({
    operationId: 'whatIfBulk',
    summary: 'What a bulk offer really saves once expiry is counted; books nothing',
  })
  @ApiOkResponse({ type: BulkAnswerDto })
  async bulk(@CurrentActor() actor: Actor, @Body() body: BulkQuestionDto): Promise<BulkAnswerDto> {
    return this.bulkWhatIf.run(actor, body);
  }
}
