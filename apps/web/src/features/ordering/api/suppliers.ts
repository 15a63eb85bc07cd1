import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

const query = { limit: 500, active: 'true' } as const;

export const suppliersQuery = queryOptions({
  queryKey: ['suppliers', 'list', query],
  queryFn: ({ signal }): Promise<Shape<'SupplierPageDto'>> =>
    answerOf(api.GET('/api/suppliers', { params: { query }, signal })),
});

/** The packs of a consumable that are in use. */
export const packsQuery = (id: string) =>
  queryOptions({
    queryKey: ['presentations', 'of', id],
    queryFn: ({ signal }) =>
      answerOf(
        api.GET('/api/consumables/{id}/presentations', { params: { path: { id } }, signal }),
      ),
  });
