import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

/** What each role may do, from the one place that decides it. */
export const rolesQuery = queryOptions({
  queryKey: ['roles'],
  queryFn: ({ signal }): Promise<Shape<'RolesDto'>> => answerOf(api.GET('/api/roles', { signal })),
  staleTime: Number.POSITIVE_INFINITY,
});
