import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type Supplier = Shape<'SupplierDto'>;

/** Every supplier of the practice, by name; also those no longer in use. */
export const suppliersQuery = queryOptions({
  queryKey: ['suppliers', 'all'],
  queryFn: async ({ signal }): Promise<readonly Supplier[]> => {
    const query = { limit: 500 };
    return (await answerOf(api.GET('/api/suppliers', { params: { query }, signal }))).items;
  },
  staleTime: 60_000,
});
