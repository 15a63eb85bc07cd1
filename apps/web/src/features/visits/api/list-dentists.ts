import { queryOptions } from '@tanstack/react-query';
import { answerOf, api } from '../../../api/client.js';

export const dentistsQuery = queryOptions({
  queryKey: ['dentists'],
  queryFn: ({ signal }) => answerOf(api.GET('/api/dentists', { signal })),
  staleTime: 5 * 60_000,
});
