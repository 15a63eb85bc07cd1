import { queryOptions } from '@tanstack/react-query';
import { answerOf, api } from '../../../api/client.js';

const query = { active: 'true', limit: 500 } as const;

export const roomsQuery = queryOptions({
  queryKey: ['locations', query],
  queryFn: ({ signal }) => answerOf(api.GET('/api/locations', { params: { query }, signal })),
  staleTime: 5 * 60_000,
});
