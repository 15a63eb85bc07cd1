import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

type Item = Shape<'ConsumableDto'>;

/** Consumables that are in use and match what was typed. */
export const itemsQuery = (q: string | undefined) =>
  queryOptions({
    queryKey: ['consumables', 'found', q],
    queryFn: ({ signal }): Promise<Shape<'ConsumablePageDto'>> => {
      const query = { limit: 30, active: 'true' as const, ...(q === undefined ? {} : { q }) };
      return answerOf(api.GET('/api/consumables', { params: { query }, signal }));
    },
    placeholderData: (before) => before,
  });

/** One consumable, for its name. */
export const itemQuery = (id: string) =>
  queryOptions({
    queryKey: ['consumables', 'one', id],
    queryFn: ({ signal }): Promise<Item> =>
      answerOf(api.GET('/api/consumables/{id}', { params: { path: { id } }, signal })),
  });

/** How one consumable is bought. */
export const packsQuery = (id: string) =>
  queryOptions({
    queryKey: ['presentations', 'packs', id],
    queryFn: ({ signal }): Promise<Shape<'PresentationPageDto'>> =>
      answerOf(
        api.GET('/api/consumables/{id}/presentations', {
          params: { path: { id }, query: { limit: 500, active: 'true' } },
          signal,
        }),
      ),
  });
