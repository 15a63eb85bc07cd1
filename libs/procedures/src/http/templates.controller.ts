import { Body, Controller, Get, HttpCode, Param, Patch, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { CurrentActor, Needs } from '#lib/access';
import { listQuery } from '#lib/catalogue';
import { type Actor, IdPipe } from '#lib/platform';
import { ChangeTemplate } from '../app/change-template.js';
import { CreateTemplate } from '../app/create-template.js';
import { GetTemplate } from '../app/get-template.js';
import { ListTemplates } from '../app/list-templates.js';
import { PreviewTemplate } from '../app/preview-template.js';
import { PreviewDto, PreviewQuestionDto } from './preview.dto.js';
import {
  NewTemplateDto,
  TemplateChangesDto,
  TemplateDto,
  TemplatePageDto,
  TemplateSummaryDto,
  VersionQueryDto,
} from './template.dto.js';
import { TemplateListQueryDto } from './template-list.dto.js';

@ApiTags('procedure templates')
@Controller('procedure-templates')
export class TemplatesController {
  constructor(
    private readonly listTemplates: ListTemplates,
    private readonly getTemplate: GetTemplate,
    private readonly createTemplate: CreateTemplate,
    private readonly changeTemplate: ChangeTemplate,
    private readonly previewTemplate: PreviewTemplate,
  ) {}

  @Get()
  @Needs('templates.read')
  @ApiOperation({ operationId: 'listTemplates', summary: 'Procedure templates, by name' })
  @ApiOkResponse({ type: TemplatePageDto })
  async list(
    @CurrentActor() actor: Actor,
    @Query() query: TemplateListQueryDto,
  ): Promise<TemplatePageDto> {
    return this.listTemplates.run(actor, listQuery(query));
  }

  @Get(':id')
  @Needs('templates.read')
  @ApiOperation({ operationId: 'getTemplate', summary: 'One version of a procedure template' })
  @ApiOkResponse({ type: TemplateDto })
  async get(
    @CurrentActor() actor: Actor,
    @Param('id', IdPipe) id: string,
    @Query() query: VersionQueryDto,
  ): Promise<TemplateDto> {
    const version = query.version === undefined ? undefined : Number(query.version);
    return this.getTemplate.run(actor, id, version);
  }

  @Post()
  @Needs('templates.write')
  @ApiOperation({ operationId: 'createTemplate', summary: 'Enter a procedure template' })
  @ApiCreatedResponse({ type: TemplateDto })
  async create(@CurrentActor() actor: Actor, @Body() body: NewTemplateDto): Promise<TemplateDto> {
    return this.createTemplate.run(actor, body);
  }

  @Patch(':id')
  @Needs('templates.write')
  @ApiOperation({ operationId: 'changeTemplate', summary: 'Rename a template or retire it' })
  @ApiOkResponse({ type: TemplateSummaryDto })
  async change(
    @CurrentActor() actor: Actor,
    @Param('id', IdPipe) id: string,
    @Body() body: TemplateChangesDto,
  ): Promise<TemplateSummaryDto> {
    return this.changeTemplate.run(actor, id, body);
  }

  @Post(':id/preview')
  @HttpCode(200)
  @Needs('templates.read')
  @ApiOperation({
    operationId: 'previewTemplate',
    summary: 'What a visit would use by this template; nothing is written',
  })
  @ApiOkResponse({ type: PreviewDto })
  async preview(
    @CurrentActor() actor: Actor,
    @Param('id', IdPipe) id: string,
    @Body() body: PreviewQuestionDto,
  ): Promise<PreviewDto> {
    return this.previewTemplate.run(actor, id, body);
  }
}
