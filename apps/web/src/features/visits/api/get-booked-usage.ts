import { keepPreviousData, queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type DayUsage = Shape<'BookedDayUsageDto'>;

export const bookedUsageQuery = (from: string, to: string) =>
  queryOptions({
    queryKey: ['booked-visits', 'usage', from, to],
    queryFn: ({ signal }) =>
      answerOf(api.GET('/api/booked-visits/usage', { params: { query: { from, to } }, signal })),
    placeholderData: keepPreviousData,
  });
