import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type Consumable = Shape<'ConsumableDto'>;

const query = { active: 'true', limit: 500 } as const;

/** What the practice uses; the service knows no shorter list of what has a shade. */
export const consumablesQuery = queryOptions({
  queryKey: ['consumables', query],
  queryFn: ({ signal }) => answerOf(api.GET('/api/consumables', { params: { query }, signal })),
  staleTime: 5 * 60_000,
});
