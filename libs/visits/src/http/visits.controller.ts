import { Body, Controller, Get, HttpCode, Param, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { CurrentActor, Needs } from '#lib/access';
import { type Actor, ApiBooking, IdempotencyKey, IdPipe, UnitOfWork } from '#lib/platform';
import { ReversalDto } from '#lib/stock';
import { PostVisit } from '../app/post-visit.js';
import { PreviewVisit } from '../app/preview-visit.js';
import { ReverseVisit } from '../app/reverse-visit.js';
import { EarlierRestorations } from '../queries/earlier-restorations.js';
import { VisitList } from '../queries/visit-list.js';
import { VisitReader } from '../queries/visit-reader.js';
import { EarlierQuery, EarlierRestorationsDto } from './earlier-restorations.dto.js';
import { PlanVisitDto, PostVisitDto } from './visit-inputs.dto.js';
import { VisitListQuery } from './visit-list.query.js';
import { VisitDto, VisitPreviewDto } from './visit-outputs.dto.js';
import { VisitPageDto } from './visit-page.dto.js';

@ApiTags('visits')
@Controller('visits')
export class VisitsController {
  constructor(
    private readonly postVisit: PostVisit,
    private readonly previewVisit: PreviewVisit,
    private readonly reverseVisit: ReverseVisit,
  ) {}

  @Post()
  @Needs('visits.post')
  @ApiBooking()
  @ApiOperation({
    operationId: 'postVisit',
    summary: 'Record a visit: stock leaves, and every restoration gets its cost',
    description:
      'Never refused because the book has too little: what is missing becomes a shortfall, priced ' +
      'at the last known cost and settled by a later delivery or count.',
  })
  @ApiCreatedResponse({ type: VisitDto })
  async post(
    @CurrentActor() actor: Actor,
    @IdempotencyKey() key: string,
    @Body() body: PostVisitDto,
  ): Promise<VisitDto> {
    return (await this.postVisit.run(actor, key, body)).body;
  }

  @Post('preview')
  @HttpCode(200)
  @Needs('visits.post')
  @ApiOperation({
    operationId: 'previewVisit',
    summary: 'What a visit would use, from which lots, and what it would cost; nothing is booked',
  })
  @ApiOkResponse({ type: VisitPreviewDto })
  async preview(
    @CurrentActor() actor: Actor,
    @Body() body: PlanVisitDto,
  ): Promise<VisitPreviewDto> {
    return this.previewVisit.run(actor, body);
  }

  @Post(':id/reversal')
  @Needs('visits.reverse')
  @ApiBooking()
  @ApiOperation({
    operationId: 'reverseVisit',
    summary: 'Undo a visit that was recorded wrongly; it stays in the book, marked as reversed',
  })
  @ApiCreatedResponse({ type: VisitDto })
  async reverse(
    @CurrentActor() actor: Actor,
    @IdempotencyKey() key: string,
    @Param('id', IdPipe) id: string,
    @Body() body: ReversalDto,
  ): Promise<VisitDto> {
    return (await this.reverseVisit.run(actor, key, id, body)).body;
  }
}

@ApiTags('visits')
@Controller('visits')
export class VisitReadsController {
  constructor(
    private readonly visitList: VisitList,
    private readonly earlier: EarlierRestorations,
    private readonly reader: VisitReader,
    private readonly uow: UnitOfWork,
  ) {}

  @Get()
  @Needs('visits.read')
  @ApiOperation({ operationId: 'listVisits', summary: 'Visits, the latest first' })
  @ApiOkResponse({ type: VisitPageDto })
  async list(@CurrentActor() actor: Actor, @Query() query: VisitListQuery): Promise<VisitPageDto> {
    return this.visitList.run(actor, query);
  }

  @Get('earlier-restorations')
  @Needs('visits.read')
  @ApiOperation({
    operationId: 'listEarlierRestorations',
    summary: 'What was restored for a chart before, the latest first; at most a hundred',
  })
  @ApiOkResponse({ type: EarlierRestorationsDto })
  async listEarlier(
    @CurrentActor() actor: Actor,
    @Query() query: EarlierQuery,
  ): Promise<EarlierRestorationsDto> {
    return this.earlier.run(actor, query);
  }

  @Get(':id')
  @Needs('visits.read')
  @ApiOperation({
    operationId: 'getVisit',
    summary: 'One visit with its restorations, usage lines, lots and cost',
  })
  @ApiOkResponse({ type: VisitDto })
  async get(@CurrentActor() actor: Actor, @Param('id', IdPipe) id: string): Promise<VisitDto> {
    return this.uow.read(actor.practiceId, (tx) => this.reader.get(tx, actor, id));
  }
}
