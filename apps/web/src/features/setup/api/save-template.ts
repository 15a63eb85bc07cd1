import { answerOf, api, type Shape } from '../../../api/client.js';
import type { Template } from './get-template.js';

export function createTemplate(body: Shape<'NewTemplateDto'>): Promise<Template> {
  return answerOf(api.POST('/api/procedure-templates', { body }));
}

export function createVersion(id: string, body: Shape<'NewVersionDto'>): Promise<Template> {
  return answerOf(
    api.POST('/api/procedure-templates/{id}/versions', { params: { path: { id } }, body }),
  );
}

export function changeTemplate(
  id: string,
  body: Shape<'TemplateChangesDto'>,
): Promise<Shape<'TemplateSummaryDto'>> {
  return answerOf(api.PATCH('/api/procedure-templates/{id}', { params: { path: { id } }, body }));
}
