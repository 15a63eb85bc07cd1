import { Module } from '@nestjs/common';
import { TypeOrmModule } from '@nestjs/typeorm';
import { ChangeTemplate } from './app/change-template.js';
import { CreateTemplate } from './app/create-template.js';
import { CreateTemplateVersion } from './app/create-template-version.js';
import { EnterTemplate } from './app/enter-template.js';
import { GetTemplate } from './app/get-template.js';
import { ListTemplateVersions } from './app/list-template-versions.js';
import { ListTemplates } from './app/list-templates.js';
import { PreviewDraft } from './app/preview-draft.js';
import { PreviewTemplate } from './app/preview-template.js';
import { ProcedureTemplateEntity } from './db/procedure-template.entity.js';
import { TemplateLineEntity } from './db/template-line.entity.js';
import { TemplateVersionEntity } from './db/template-version.entity.js';
import { TemplateVersionsController } from './http/template-versions.controller.js';
import { TemplatesController } from './http/templates.controller.js';

const CREATORS = [CreateTemplate, CreateTemplateVersion, EnterTemplate];

@Module({
  imports: [
    TypeOrmModule.forFeature([ProcedureTemplateEntity, TemplateLineEntity, TemplateVersionEntity]),
  ],
  controllers: [TemplatesController, TemplateVersionsController],
  providers: [
    ...CREATORS,
    ChangeTemplate,
    GetTemplate,
    ListTemplates,
    ListTemplateVersions,
    PreviewDraft,
    PreviewTemplate,
  ],
  exports: CREATORS,
})
export class ProceduresModule {}
