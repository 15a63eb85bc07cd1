import { Controller, Get, Query } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { CurrentActor, Needs } from '#lib/access';
import { type Actor } from '#lib/platform';
import { ReportPriceVariances } from '../queries/report-price-variances.js';
import { PriceChangeQueryDto } from './costing-queries.dto.js';
import { PriceVariancesDto } from './price-variance.dto.js';

@ApiTags('reports')
@Controller('reports')
export class PriceVariancesController {
  constructor(private readonly priceVariances: ReportPriceVariances) {}

  @Get('price-variances')
  @Needs('costs.read')
  @ApiOperation({
    operationId: 'reportPriceVariances',
    summary: 'What later invoices changed of the cost of what had been used by then',
  })
  @ApiOkResponse({ type: PriceVariancesDto })
  async get(
    @CurrentActor() actor: Actor,
    @Query() query: PriceChangeQueryDto,
  ): Promise<PriceVariancesDto> {
    return this.priceVariances.run(actor, query);
  }
}
