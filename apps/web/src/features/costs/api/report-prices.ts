import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';
import { type Choice, chosen } from '../choice.js';

export type PriceReport = Shape<'PriceChangesDto'>;
export type Repriced = Shape<'RepricedConsumableDto'>;
export type PriceChange = Shape<'PriceChangeDto'>;

/** How prices changed from delivery to delivery, and what that did to cost. */
export const pricesQuery = (period: Pick<Choice, 'from' | 'to'>) =>
  queryOptions({
    queryKey: ['reports', 'price-changes', period],
    queryFn: ({ signal }): Promise<PriceReport> =>
      answerOf(
        api.GET('/api/reports/price-changes', { params: { query: chosen(period) }, signal }),
      ),
    placeholderData: (before) => before,
  });
