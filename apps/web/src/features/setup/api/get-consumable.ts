import { queryOptions } from '@tanstack/react-query';
import { answerOf, api } from '../../../api/client.js';
import type { Consumable } from './list-consumables.js';

export const consumableQuery = (id: string) =>
  queryOptions({
    queryKey: ['consumables', 'one', id],
    queryFn: ({ signal }): Promise<Consumable> =>
      answerOf(api.GET('/api/consumables/{id}', { params: { path: { id } }, signal })),
  });
