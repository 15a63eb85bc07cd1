import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type Suppliers = Shape<'SuppliersDto'>;
export type Supplier = Shape<'SupplierComparisonDto'>;
export type PricedConsumable = Shape<'ComparedConsumableDto'>;
export type PricedOffer = Shape<'ComparedOfferDto'>;

export const suppliersQuery = queryOptions({
  queryKey: ['reorder', 'suppliers'],
  queryFn: ({ signal }): Promise<Suppliers> =>
    answerOf(api.GET('/api/reorder/suppliers', { signal })),
});
