import { keepPreviousData, queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';
import type { paths } from '../../../api/generated/schema.js';

export type VisitSummary = Shape<'VisitSummaryDto'>;
type Query = NonNullable<paths['/api/visits']['get']['parameters']['query']>;

export const visitsQuery = (query: Query) =>
  queryOptions({
    queryKey: ['visits', 'list', query],
    queryFn: ({ signal }) => answerOf(api.GET('/api/visits', { params: { query }, signal })),
    placeholderData: keepPreviousData,
  });
