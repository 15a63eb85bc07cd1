import { Controller, Get, Headers, Query, Res } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiProduces, ApiTags } from '@nestjs/swagger';
import type { FastifyReply } from 'fastify';
import { CurrentActor, Needs } from '#lib/access';
import type { Actor } from '#lib/platform';
import { ReportRestorationCosts } from '../queries/report-restoration-costs.js';
import { ReportTemplateUsage } from '../queries/report-template-usage.js';
import { ReportWaste } from '../queries/report-waste.js';
import { CostReportDto } from './cost-report.dto.js';
import {
  CostReportQueryDto,
  PeriodQueryDto,
  TemplateUsageQueryDto,
} from './costing-queries.dto.js';
import { asCsv, costReportCsv, templateUsageCsv, wantsCsv, wasteCsv } from './report-csv.js';
import { TemplateUsageDto, WasteReportDto } from './usage-waste.dto.js';

const CSV_TEXT = { schema: { type: 'string' as const }, description: 'CSV (RFC 4180).' };

/** Every report is JSON, or CSV when Accept asks for text/csv or the path ends in .csv. */
@ApiTags('reports')
@Controller('reports')
export class ReportsController {
  constructor(
    private readonly restorationCosts: ReportRestorationCosts,
    private readonly templateUsage: ReportTemplateUsage,
    private readonly waste: ReportWaste,
  ) {}

  @Get('restoration-costs')
  @Needs('costs.read')
  @ApiOperation({
    operationId: 'reportRestorationCosts',
    summary: 'What restorations cost in materials, by template, reason, dentist or month',
  })
  @ApiOkResponse({ type: CostReportDto })
  async costs(
    @CurrentActor() actor: Actor,
    @Query() query: CostReportQueryDto,
    @Headers('accept') accept: string | undefined,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<CostReportDto | string> {
    const report = await this.restorationCosts.run(actor, query);
    if (!wantsCsv(accept)) return report;
    return asCsv(reply, 'restoration-costs', costReportCsv(report));
  }

  @Get('restoration-costs.csv')
  @Needs('costs.read')
  @ApiOperation({
    operationId: 'reportRestorationCostsCsv',
    summary: 'The same report for a spreadsheet',
  })
  @ApiProduces('text/csv')
  @ApiOkResponse(CSV_TEXT)
  async costsCsv(
    @CurrentActor() actor: Actor,
    @Query() query: CostReportQueryDto,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<string> {
    const report = await this.restorationCosts.run(actor, query);
    return asCsv(reply, 'restoration-costs', costReportCsv(report));
  }

  @Get('template-usage')
  @Needs('costs.read')
  @ApiOperation({
    operationId: 'reportTemplateUsage',
    summary: 'What was really used beside what each version of a template plans',
  })
  @ApiOkResponse({ type: TemplateUsageDto })
  async usage(
    @CurrentActor() actor: Actor,
    @Query() query: TemplateUsageQueryDto,
    @Headers('accept') accept: string | undefined,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<TemplateUsageDto | string> {
    const report = await this.templateUsage.run(actor, query);
    return wantsCsv(accept) ? asCsv(reply, 'template-usage', templateUsageCsv(report)) : report;
  }

  @Get('template-usage.csv')
  @Needs('costs.read')
  @ApiOperation({
    operationId: 'reportTemplateUsageCsv',
    summary: 'The same report for a spreadsheet',
  })
  @ApiProduces('text/csv')
  @ApiOkResponse(CSV_TEXT)
  async usageCsv(
    @CurrentActor() actor: Actor,
    @Query() query: TemplateUsageQueryDto,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<string> {
    const report = await this.templateUsage.run(actor, query);
    return asCsv(reply, 'template-usage', templateUsageCsv(report));
  }

  @Get('waste')
  @Needs('costs.read')
  @ApiOperation({
    operationId: 'reportWaste',
    summary: 'What was thrown away, left over at the chair or done again, and what it cost',
  })
  @ApiOkResponse({ type: WasteReportDto })
  async wasted(
    @CurrentActor() actor: Actor,
    @Query() query: PeriodQueryDto,
    @Headers('accept') accept: string | undefined,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<WasteReportDto | string> {
    const report = await this.waste.run(actor, query);
    return wantsCsv(accept) ? asCsv(reply, 'waste', wasteCsv(report)) : report;
  }

  @Get('waste.csv')
  @Needs('costs.read')
  @ApiOperation({ operationId: 'reportWasteCsv', summary: 'The same report for a spreadsheet' })
  @ApiProduces('text/csv')
  @ApiOkResponse(CSV_TEXT)
  async wastedCsv(
    @CurrentActor() actor: Actor,
    @Query() query: PeriodQueryDto,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<string> {
    return asCsv(reply, 'waste', wasteCsv(await this.waste.run(actor, query)));
  }
}
