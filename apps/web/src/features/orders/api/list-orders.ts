import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type OrderSummary = Shape<'OrderSummaryDto'>;

interface Search {
  readonly state?: 'open' | OrderSummary['state'] | undefined;
  readonly supplierId?: string | undefined;
  readonly late?: '1' | undefined;
  readonly cursor?: string | undefined;
}

export const ordersQuery = ({ state, supplierId, late, cursor }: Search) =>
  queryOptions({
    queryKey: ['orders', 'list', { state, supplierId, late, cursor }],
    queryFn: ({ signal }): Promise<Shape<'OrderPageDto'>> => {
      const query = {
        ...(state === undefined ? {} : { state }),
        ...(supplierId === undefined ? {} : { supplierId }),
        ...(late === undefined ? {} : { overdue: 'true' as const }),
        ...(cursor === undefined ? {} : { cursor }),
      };
      return answerOf(api.GET('/api/orders', { params: { query }, signal }));
    },
    placeholderData: (before) => before,
  });
