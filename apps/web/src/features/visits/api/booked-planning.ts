import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type BookedPlanning = Shape<'BookedPlanningDto'>;

export const bookedPlanningQuery = queryOptions({
  queryKey: ['reorder', 'settings', 'booked-visits'],
  queryFn: ({ signal }): Promise<BookedPlanning> =>
    answerOf(api.GET('/api/reorder/settings/booked-visits', { signal })),
});

export const setBookedPlanning = (body: BookedPlanning): Promise<BookedPlanning> =>
  answerOf(api.PUT('/api/reorder/settings/booked-visits', { body }));
