import { Body, Controller, Get, HttpCode, Param, Post } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { CurrentActor, Needs } from '#lib/access';
import { type Actor, IdPipe } from '#lib/platform';
import { CreateTemplateVersion } from '../app/create-template-version.js';
import { ListTemplateVersions } from '../app/list-template-versions.js';
import { PreviewDraft } from '../app/preview-draft.js';
import { DraftPreviewDto, DraftQuestionDto } from './preview.dto.js';
import { NewVersionDto, TemplateDto, VersionsDto } from './template.dto.js';

@ApiTags('procedure templates')
@Controller('procedure-templates')
export class TemplateVersionsController {
  constructor(
    private readonly listVersions: ListTemplateVersions,
    private readonly createVersion: CreateTemplateVersion,
    private readonly previewDraft: PreviewDraft,
  ) {}

  @Get(':id/versions')
  @Needs('templates.read')
  @ApiOperation({ operationId: 'listTemplateVersions', summary: 'Its versions, newest first' })
  @ApiOkResponse({ type: VersionsDto })
  async list(@CurrentActor() actor: Actor, @Param('id', IdPipe) id: string): Promise<VersionsDto> {
    return this.listVersions.run(actor, id);
  }

  @Post(':id/versions')
  @Needs('templates.write')
  @ApiOperation({
    operationId: 'createTemplateVersion',
    summary: 'Write a new version; visits keep the one they used',
  })
  @ApiCreatedResponse({ type: TemplateDto })
  async create(
    @CurrentActor() actor: Actor,
    @Param('id', IdPipe) id: string,
    @Body() body: NewVersionDto,
  ): Promise<TemplateDto> {
    return this.createVersion.run(actor, id, body);
  }

  @Post('preview')
  @HttpCode(200)
  @Needs('templates.write')
  @ApiOperation({
    operationId: 'previewDraft',
    summary: 'What a visit would use by a version that is not written yet; nothing is written',
  })
  @ApiOkResponse({ type: DraftPreviewDto })
  async preview(
    @CurrentActor() actor: Actor,
    @Body() body: DraftQuestionDto,
  ): Promise<DraftPreviewDto> {
    return this.previewDraft.run(actor, body);
  }
}
