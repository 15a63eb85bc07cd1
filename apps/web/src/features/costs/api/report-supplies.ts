import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';
import { type Choice, chosen } from '../choice.js';
import type { ShareBase } from '../earned/earned-choices.js';

export type SupplyReport = Shape<'SupplyShareDto'>;
export type SupplyMonth = Shape<'SupplyMonthDto'>;

/** What supplies cost as a share of fees or of income, by month. */
export const suppliesQuery = (period: Pick<Choice, 'from' | 'to'>, shareOf: ShareBase) =>
  queryOptions({
    queryKey: ['reports', 'supply-share', period, shareOf],
    queryFn: ({ signal }): Promise<SupplyReport> => {
      const query = { ...chosen(period), shareOf };
      return answerOf(api.GET('/api/reports/supply-share', { params: { query }, signal }));
    },
    placeholderData: (before) => before,
  });
