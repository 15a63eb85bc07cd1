import { Controller, Get, Headers, Query, Res } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { FastifyReply } from 'fastify';
import { CurrentActor, Needs } from '#lib/access';
import { asFile, type FileContent, type FileForm, ReportFile, wantedForm } from '#lib/costing';
import type { Actor } from '#lib/platform';
import { ReportContributions } from '../queries/report-contributions.js';
import { ReportSupplyShare } from '../queries/report-supply-share.js';
import { ContributionQueryDto, ContributionReportDto } from './contribution.dto.js';
import { contributionTable, supplyShareTable } from './pricing-tables.js';
import { SupplyShareDto, SupplyShareQueryDto } from './supply-share.dto.js';

type AskedFile<Query> = [actor: Actor, query: Query, reply: FastifyReply, form: FileForm];

/** Every report is JSON, or the file that Accept asks for or the ending of the path. */
@ApiTags('reports')
@Controller('reports')
export class PricingReportsController {
  constructor(
    private readonly contributions: ReportContributions,
    private readonly supplyShare: ReportSupplyShare,
  ) {}

  @Get('contributions')
  @Needs('costs.read')
  @ApiOperation({
    operationId: 'reportContributions',
    summary: 'What restorations leave after material, by template, reason, dentist or month',
  })
  @ApiOkResponse({ type: ContributionReportDto })
  async contribution(
    @CurrentActor() actor: Actor,
    @Query() query: ContributionQueryDto,
    @Headers('accept') accept: string | undefined,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<ContributionReportDto | FileContent> {
    const report = await this.contributions.run(actor, query);
    const form = wantedForm(accept);
    return form === undefined ? report : asFile(reply, form, contributionTable(report, query));
  }

  @ReportFile('contributions', 'csv')
  async contributionCsv(
    @CurrentActor() actor: Actor,
    @Query() query: ContributionQueryDto,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<FileContent> {
    return this.contributionFile(actor, query, reply, 'csv');
  }

  @ReportFile('contributions', 'xlsx')
  async contributionXlsx(
    @CurrentActor() actor: Actor,
    @Query() query: ContributionQueryDto,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<FileContent> {
    return this.contributionFile(actor, query, reply, 'xlsx');
  }

  @ReportFile('contributions', 'pdf')
  async contributionPdf(
    @CurrentActor() actor: Actor,
    @Query() query: ContributionQueryDto,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<FileContent> {
    return this.contributionFile(actor, query, reply, 'pdf');
  }

  @Get('supply-share')
  @Needs('costs.read')
  @ApiOperation({
    operationId: 'reportSupplyShare',
    summary: 'What supplies cost as a share of fees, by month',
  })
  @ApiOkResponse({ type: SupplyShareDto })
  async supply(
    @CurrentActor() actor: Actor,
    @Query() query: SupplyShareQueryDto,
    @Headers('accept') accept: string | undefined,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<SupplyShareDto | FileContent> {
    const report = await this.supplyShare.run(actor, query);
    const form = wantedForm(accept);
    return form === undefined ? report : asFile(reply, form, supplyShareTable(report, query));
  }

  @ReportFile('supply-share', 'csv')
  async supplyCsv(
    @CurrentActor() actor: Actor,
    @Query() query: SupplyShareQueryDto,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<FileContent> {
    return this.supplyFile(actor, query, reply, 'csv');
  }

  @ReportFile('supply-share', 'xlsx')
  async supplyXlsx(
    @CurrentActor() actor: Actor,
    @Query() query: SupplyShareQueryDto,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<FileContent> {
    return this.supplyFile(actor, query, reply, 'xlsx');
  }

  @ReportFile('supply-share', 'pdf')
  async supplyPdf(
    @CurrentActor() actor: Actor,
    @Query() query: SupplyShareQueryDto,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<FileContent> {
    return this.supplyFile(actor, query, reply, 'pdf');
  }

  private async contributionFile(
    ...[actor, query, reply, form]: AskedFile<ContributionQueryDto>
  ): Promise<FileContent> {
    const report = await this.contributions.run(actor, query);
    return asFile(reply, form, contributionTable(report, query));
  }

  private async supplyFile(
    ...[actor, query, reply, form]: AskedFile<SupplyShareQueryDto>
  ): Promise<FileContent> {
    const report = await this.supplyShare.run(actor, query);
    return asFile(reply, form, supplyShareTable(report, query));
  }
}
