import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';
import { activeFlag, type Shown } from '../../../ui/shown.js';
import type { SupplierSort } from '../sorts.js';

export type Supplier = Shape<'SupplierDto'>;

interface Search {
  readonly q?: string | undefined;
  readonly show?: Shown | undefined;
  readonly sort?: SupplierSort | undefined;
  readonly cursor?: string | undefined;
  readonly limit?: number;
}

export const suppliersQuery = ({ q, show, sort, cursor, limit = 50 }: Search) =>
  queryOptions({
    queryKey: ['suppliers', 'list', { q, show, sort, cursor, limit }],
    queryFn: ({ signal }): Promise<Shape<'SupplierPageDto'>> => {
      const query = {
        limit,
        ...activeFlag(show),
        ...(q === undefined ? {} : { q }),
        ...(sort === undefined ? {} : { sort }),
        ...(cursor === undefined ? {} : { cursor }),
      };
      return answerOf(api.GET('/api/suppliers', { params: { query }, signal }));
    },
    placeholderData: (before) => before,
  });

/** By id, also when it is not on the page that is shown. */
export const supplierQuery = (id: string) =>
  queryOptions({
    queryKey: ['suppliers', 'one', id],
    queryFn: ({ signal }): Promise<Supplier> =>
      answerOf(api.GET('/api/suppliers/{id}', { params: { path: { id } }, signal })),
  });
