import { keepPreviousData, queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';
import type { paths } from '../../../api/generated/schema.js';

export type BookedVisit = Shape<'BookedVisitDto'>;
type Query = NonNullable<paths['/api/booked-visits']['get']['parameters']['query']>;

export const bookedVisitsQuery = (query: Query) =>
  queryOptions({
    queryKey: ['booked-visits', 'list', query],
    queryFn: ({ signal }) => answerOf(api.GET('/api/booked-visits', { params: { query }, signal })),
    placeholderData: keepPreviousData,
  });
