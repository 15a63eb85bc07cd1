import { Controller, Get, Param, Query } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiParam, ApiTags } from '@nestjs/swagger';
import { CurrentActor, Needs } from '#lib/access';
import { type Actor, IdPipe } from '#lib/platform';
import { LotReader } from '../queries/lot-reader.js';
import { TraceLot } from '../queries/trace-lot.js';
import { TraceVisits } from '../queries/trace-visits.js';
import { LotDto, LotPageDto } from './lot.dto.js';
import { LotTraceDto } from './lot-trace.dto.js';
import { ChartTraceDto, VisitTraceDto } from './trace.dto.js';
import { LotQueryDto, TraceQueryDto } from './trace-queries.dto.js';

@ApiTags('tracing')
@Controller()
export class TracingController {
  constructor(
    private readonly lotReader: LotReader,
    private readonly traceLot: TraceLot,
    private readonly traceVisits: TraceVisits,
  ) {}

  @Get('lots')
  @Needs('stock.read')
  @ApiOperation({ operationId: 'listLots', summary: 'Lots by number or product' })
  @ApiOkResponse({ type: LotPageDto })
  async list(@CurrentActor() actor: Actor, @Query() query: LotQueryDto): Promise<LotPageDto> {
    return this.lotReader.list(actor, query);
  }

  @Get('lots/:id')
  @Needs('stock.read')
  @ApiOperation({ operationId: 'getLot', summary: 'A lot with its deliveries and its holds' })
  @ApiOkResponse({ type: LotDto })
  async get(@CurrentActor() actor: Actor, @Param('id', IdPipe) id: string): Promise<LotDto> {
    return this.lotReader.get(actor, id);
  }

  @Get('lots/:id/trace')
  @Needs('trace.read')
  @ApiOperation({
    operationId: 'traceLot',
    summary: 'From a lot to every delivery, place, visit and tooth, with its balance',
  })
  @ApiOkResponse({ type: LotTraceDto })
  async forward(
    @CurrentActor() actor: Actor,
    @Param('id', IdPipe) id: string,
    @Query() query: TraceQueryDto,
  ): Promise<LotTraceDto> {
    return this.traceLot.run(actor, id, query);
  }

  @Get('visits/:id/trace')
  @Needs('trace.read')
  @ApiOperation({ operationId: 'traceVisit', summary: 'From a visit to every lot it used' })
  @ApiOkResponse({ type: VisitTraceDto })
  async visit(
    @CurrentActor() actor: Actor,
    @Param('id', IdPipe) id: string,
  ): Promise<VisitTraceDto> {
    return this.traceVisits.visit(actor, id);
  }

  @Get('charts/:reference/trace')
  @Needs('trace.read')
  @ApiOperation({
    operationId: 'traceChart',
    summary: 'From a chart reference to every visit of it and every lot they used',
  })
  @ApiParam({ name: 'reference', type: String, example: 'C-1023', description: 'URL-encoded.' })
  @ApiOkResponse({ type: ChartTraceDto })
  async chart(
    @CurrentActor() actor: Actor,
    @Param('reference') reference: string,
    @Query() query: TraceQueryDto,
  ): Promise<ChartTraceDto> {
    return this.traceVisits.chart(actor, reference, query);
  }
}
