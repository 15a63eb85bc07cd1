import { Controller, Get, Headers, Query, Res } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { FastifyReply } from 'fastify';
import { CurrentActor, Needs } from '#lib/access';
import { type Actor } from '#lib/platform';
import { ReportHabits } from '../queries/report-habits.js';
import { ReportPriceChanges } from '../queries/report-price-changes.js';
import { HabitQueryDto, PriceChangeQueryDto } from './costing-queries.dto.js';
import { HabitsDto } from './habit.dto.js';
import { habitTable, priceChangeTable } from './more-tables.js';
import { PriceChangesDto } from './price-change.dto.js';
import { ReportFile } from './report-file.decorator.js';
import { asFile, type FileContent, wantedForm } from './report-files.js';

@ApiTags('reports')
@Controller('reports')
export class SavingsReportsController {
  constructor(
    private readonly priceChanges: ReportPriceChanges,
    private readonly reportHabits: ReportHabits,
  ) {}

  @Get('price-changes')
  @Needs('costs.read')
  @ApiOperation({
    operationId: 'reportPriceChanges',
    summary: 'How prices changed between deliveries, and what that did to the cost',
  })
  @ApiOkResponse({ type: PriceChangesDto })
  async prices(
    @CurrentActor() actor: Actor,
    @Query() query: PriceChangeQueryDto,
    @Headers('accept') accept: string | undefined,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<PriceChangesDto | FileContent> {
    const report = await this.priceChanges.run(actor, query);
    const form = wantedForm(accept);
    return form === undefined ? report : asFile(reply, form, priceChangeTable(report, query));
  }

  @ReportFile('price-changes', 'csv')
  async pricesCsv(
    @CurrentActor() actor: Actor,
    @Query() query: PriceChangeQueryDto,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<FileContent> {
    return asFile(reply, 'csv', priceChangeTable(await this.priceChanges.run(actor, query), query));
  }

  @ReportFile('price-changes', 'xlsx')
  async pricesXlsx(
    @CurrentActor() actor: Actor,
    @Query() query: PriceChangeQueryDto,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<FileContent> {
    return asFile(
      reply,
      'xlsx',
      priceChangeTable(await this.priceChanges.run(actor, query), query),
    );
  }

  @ReportFile('price-changes', 'pdf')
  async pricesPdf(
    @CurrentActor() actor: Actor,
    @Query() query: PriceChangeQueryDto,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<FileContent> {
    return asFile(reply, 'pdf', priceChangeTable(await this.priceChanges.run(actor, query), query));
  }

  @Get('habits')
  @Needs('costs.read')
  @ApiOperation({
    operationId: 'reportHabits',
    summary: 'The costliest habits, and what changing each would save in a year',
  })
  @ApiOkResponse({ type: HabitsDto })
  async habits(
    @CurrentActor() actor: Actor,
    @Query() query: HabitQueryDto,
    @Headers('accept') accept: string | undefined,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<HabitsDto | FileContent> {
    const report = await this.reportHabits.run(actor, query);
    const form = wantedForm(accept);
    return form === undefined ? report : asFile(reply, form, habitTable(report, query));
  }

  @ReportFile('habits', 'csv')
  async habitsCsv(
    @CurrentActor() actor: Actor,
    @Query() query: HabitQueryDto,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<FileContent> {
    return asFile(reply, 'csv', habitTable(await this.reportHabits.run(actor, query), query));
  }

  @ReportFile('habits', 'xlsx')
  async habitsXlsx(
    @CurrentActor() actor: Actor,
    @Query() query: HabitQueryDto,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<FileContent> {
    return asFile(reply, 'xlsx', habitTable(await this.reportHabits.run(actor, query), query));
  }

  @ReportFile('habits', 'pdf')
  async habitsPdf(
    @CurrentActor() actor: Actor,
    @Query() query: HabitQueryDto,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<FileContent> {
    return asFile(reply, 'pdf', habitTable(await this.reportHabits.run(actor, query), query));
  }
}
