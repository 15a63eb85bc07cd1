import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type Shortfall = Shape<'ShortfallDto'>;

/** What visits used of a consumable that is on no delivery yet. */
export const openShortfallsQuery = (consumableId: string) =>
  queryOptions({
    queryKey: ['shortfalls', { consumableId, open: true }],
    queryFn: ({ signal }) => {
      const query = { consumableId, open: 'true' as const, limit: 100 };
      return answerOf(api.GET('/api/shortfalls', { params: { query }, signal }));
    },
  });
