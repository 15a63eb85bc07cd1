import { Controller, Get, Headers, Query, Res } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
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
import { ReportFile } from './report-file.decorator.js';
import { asFile, type FileContent, wantedForm } from './report-files.js';
import { costReportTable, templateUsageTable, wasteTable } from './report-tables.js';
import { TemplateUsageDto, WasteReportDto } from './usage-waste.dto.js';

/** Every report is JSON, or the file that Accept asks for or the ending of the path. */
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
  ): Promise<CostReportDto | FileContent> {
    const report = await this.restorationCosts.run(actor, query);
    const form = wantedForm(accept);
    return form === undefined ? report : asFile(reply, form, costReportTable(report, query));
  }

  @ReportFile('restoration-costs', 'csv')
  async costsCsv(
    @CurrentActor() actor: Actor,
    @Query() query: CostReportQueryDto,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<FileContent> {
    return asFile(
      reply,
      'csv',
      costReportTable(await this.restorationCosts.run(actor, query), query),
    );
  }

  @ReportFile('restoration-costs', 'xlsx')
  async costsXlsx(
    @CurrentActor() actor: Actor,
    @Query() query: CostReportQueryDto,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<FileContent> {
    return asFile(
      reply,
      'xlsx',
      costReportTable(await this.restorationCosts.run(actor, query), query),
    );
  }

  @ReportFile('restoration-costs', 'pdf')
  async costsPdf(
    @CurrentActor() actor: Actor,
    @Query() query: CostReportQueryDto,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<FileContent> {
    return asFile(
      reply,
      'pdf',
      costReportTable(await this.restorationCosts.run(actor, query), query),
    );
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
  ): Promise<TemplateUsageDto | FileContent> {
    const report = await this.templateUsage.run(actor, query);
    const form = wantedForm(accept);
    return form === undefined ? report : asFile(reply, form, templateUsageTable(report, query));
  }

  @ReportFile('template-usage', 'csv')
  async usageCsv(
    @CurrentActor() actor: Actor,
    @Query() query: TemplateUsageQueryDto,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<FileContent> {
    return asFile(
      reply,
      'csv',
      templateUsageTable(await this.templateUsage.run(actor, query), query),
    );
  }

  @ReportFile('template-usage', 'xlsx')
  async usageXlsx(
    @CurrentActor() actor: Actor,
    @Query() query: TemplateUsageQueryDto,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<FileContent> {
    return asFile(
      reply,
      'xlsx',
      templateUsageTable(await this.templateUsage.run(actor, query), query),
    );
  }

  @ReportFile('template-usage', 'pdf')
  async usagePdf(
    @CurrentActor() actor: Actor,
    @Query() query: TemplateUsageQueryDto,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<FileContent> {
    return asFile(
      reply,
      'pdf',
      templateUsageTable(await this.templateUsage.run(actor, query), query),
    );
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
  ): Promise<WasteReportDto | FileContent> {
    const report = await this.waste.run(actor, query);
    const form = wantedForm(accept);
    return form === undefined ? report : asFile(reply, form, wasteTable(report, query));
  }

  @ReportFile('waste', 'csv')
  async wastedCsv(
    @CurrentActor() actor: Actor,
    @Query() query: PeriodQueryDto,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<FileContent> {
    return asFile(reply, 'csv', wasteTable(await this.waste.run(actor, query), query));
  }

  @ReportFile('waste', 'xlsx')
  async wastedXlsx(
    @CurrentActor() actor: Actor,
    @Query() query: PeriodQueryDto,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<FileContent> {
    return asFile(reply, 'xlsx', wasteTable(await this.waste.run(actor, query), query));
  }

  @ReportFile('waste', 'pdf')
  async wastedPdf(
    @CurrentActor() actor: Actor,
    @Query() query: PeriodQueryDto,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<FileContent> {
    return asFile(reply, 'pdf', wasteTable(await this.waste.run(actor, query), query));
  }
}
