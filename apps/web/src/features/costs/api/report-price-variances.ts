import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';
import { type Choice, chosen } from '../choice.js';

export type PriceVariances = Shape<'PriceVariancesDto'>;

/** What invoices that came later said of what had been used by then. */
export const priceVariancesQuery = (period: Pick<Choice, 'from' | 'to'>) =>
  queryOptions({
    queryKey: ['reports', 'price-variances', period],
    queryFn: ({ signal }): Promise<PriceVariances> =>
      answerOf(
        api.GET('/api/reports/price-variances', { params: { query: chosen(period) }, signal }),
      ),
    placeholderData: (before) => before,
  });
