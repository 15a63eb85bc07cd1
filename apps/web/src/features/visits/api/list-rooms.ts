import { queryOptions } from '@tanstack/react-query';
import { answerOf, api } from '../../../api/client.js';

/** With those no longer in use: old visits were there. */
const query = { limit: 500 } as const;

export const roomsQuery = queryOptions({
  queryKey: ['locations', query],
  queryFn: ({ signal }) => answerOf(api.GET('/api/locations', { params: { query }, signal })),
  staleTime: 5 * 60_000,
});
