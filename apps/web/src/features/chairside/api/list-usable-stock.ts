import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type Holding = Shape<'StockHoldingDto'>;

export const usableStockQuery = (consumableId: string) => {
  const query = { consumableId, status: 'usable', sort: 'expiry', limit: 100 } as const;
  return queryOptions({
    queryKey: ['stock', query],
    queryFn: ({ signal }) => answerOf(api.GET('/api/stock', { params: { query }, signal })),
  });
};
