import { answerOf, api, type Shape } from '../../../api/client.js';
import type { Presentation } from './list-presentations.js';

export function createPresentation(body: Shape<'NewPresentationDto'>): Promise<Presentation> {
  return answerOf(api.POST('/api/presentations', { body }));
}

export function changePresentation(
  id: string,
  body: Shape<'PresentationChangesDto'>,
): Promise<Presentation> {
  return answerOf(api.PATCH('/api/presentations/{id}', { params: { path: { id } }, body }));
}
