import { answerOf, api, type Shape } from '../../../api/client.js';

export function changeBookedVisit(id: string, body: Shape<'ChangeBookedVisitDto'>) {
  return answerOf(api.PUT('/api/booked-visits/{id}', { params: { path: { id } }, body }));
}
