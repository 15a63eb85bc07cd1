import { answerOf, api, type Shape } from '../../../api/client.js';

export type BookedVisit = Shape<'BookedVisitDto'>;

export function getBookedVisit(id: string): Promise<BookedVisit> {
  return answerOf(api.GET('/api/booked-visits/{id}', { params: { path: { id } } }));
}
