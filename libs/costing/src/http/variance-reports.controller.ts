import { Controller, Get, Headers, Param, Query, Res } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { FastifyReply } from 'fastify';
import { CurrentActor, Needs } from '#lib/access';
import { type Actor, IdPipe } from '#lib/platform';
import { ReportChairTime } from '../queries/report-chair-time.js';
import { ReportVariances } from '../queries/report-variances.js';
import { SuggestTemplateVersion } from '../queries/suggest-template-version.js';
import { ChairTimeDto } from './chair-time.dto.js';
import { ChairTimeQueryDto, SuggestionQueryDto, VarianceQueryDto } from './costing-queries.dto.js';
import { chairTimeTable, varianceTable } from './more-tables.js';
import { ReportFile } from './report-file.decorator.js';
import { asFile, type FileContent, wantedForm } from './report-files.js';
import { SuggestionDto } from './suggestion.dto.js';
import { VarianceReportDto } from './variance.dto.js';

@ApiTags('reports')
@Controller('reports')
export class VarianceReportsController {
  constructor(
    private readonly reportVariances: ReportVariances,
    private readonly reportChairTime: ReportChairTime,
    private readonly suggestVersion: SuggestTemplateVersion,
  ) {}

  @Get('variances')
  @Needs('costs.read')
  @ApiOperation({
    operationId: 'reportVariances',
    summary: 'Actual and standard cost with price and usage variance, waste and retakes',
  })
  @ApiOkResponse({ type: VarianceReportDto })
  async variances(
    @CurrentActor() actor: Actor,
    @Query() query: VarianceQueryDto,
    @Headers('accept') accept: string | undefined,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<VarianceReportDto | FileContent> {
    const report = await this.reportVariances.run(actor, query);
    const form = wantedForm(accept);
    return form === undefined ? report : asFile(reply, form, varianceTable(report, query));
  }

  @ReportFile('variances', 'csv')
  async variancesCsv(
    @CurrentActor() actor: Actor,
    @Query() query: VarianceQueryDto,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<FileContent> {
    return asFile(reply, 'csv', varianceTable(await this.reportVariances.run(actor, query), query));
  }

  @ReportFile('variances', 'xlsx')
  async variancesXlsx(
    @CurrentActor() actor: Actor,
    @Query() query: VarianceQueryDto,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<FileContent> {
    return asFile(
      reply,
      'xlsx',
      varianceTable(await this.reportVariances.run(actor, query), query),
    );
  }

  @ReportFile('variances', 'pdf')
  async variancesPdf(
    @CurrentActor() actor: Actor,
    @Query() query: VarianceQueryDto,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<FileContent> {
    return asFile(reply, 'pdf', varianceTable(await this.reportVariances.run(actor, query), query));
  }

  @Get('chair-time')
  @Needs('costs.read')
  @ApiOperation({
    operationId: 'reportChairTime',
    summary: 'Chair minutes at the capacity cost rate, and idle capacity beside them',
  })
  @ApiOkResponse({ type: ChairTimeDto })
  async chairTime(
    @CurrentActor() actor: Actor,
    @Query() query: ChairTimeQueryDto,
    @Headers('accept') accept: string | undefined,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<ChairTimeDto | FileContent> {
    const report = await this.reportChairTime.run(actor, query);
    const form = wantedForm(accept);
    return form === undefined ? report : asFile(reply, form, chairTimeTable(report, query));
  }

  @ReportFile('chair-time', 'csv')
  async chairTimeCsv(
    @CurrentActor() actor: Actor,
    @Query() query: ChairTimeQueryDto,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<FileContent> {
    return asFile(
      reply,
      'csv',
      chairTimeTable(await this.reportChairTime.run(actor, query), query),
    );
  }

  @ReportFile('chair-time', 'xlsx')
  async chairTimeXlsx(
    @CurrentActor() actor: Actor,
    @Query() query: ChairTimeQueryDto,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<FileContent> {
    return asFile(
      reply,
      'xlsx',
      chairTimeTable(await this.reportChairTime.run(actor, query), query),
    );
  }

  @ReportFile('chair-time', 'pdf')
  async chairTimePdf(
    @CurrentActor() actor: Actor,
    @Query() query: ChairTimeQueryDto,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<FileContent> {
    return asFile(
      reply,
      'pdf',
      chairTimeTable(await this.reportChairTime.run(actor, query), query),
    );
  }

  @Get('template-usage/:templateId/suggestion')
  @Needs('costs.read')
  @ApiOperation({
    operationId: 'suggestTemplateVersion',
    summary: 'What a template says beside what was used, and the version that would say so',
  })
  @ApiOkResponse({ type: SuggestionDto })
  async suggestion(
    @CurrentActor() actor: Actor,
    @Param('templateId', IdPipe) templateId: string,
    @Query() query: SuggestionQueryDto,
  ): Promise<SuggestionDto> {
    return this.suggestVersion.run(actor, templateId, query);
  }
}
