import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';
import { given } from './given.js';

export type SummaryRow = Shape<'StockSummaryDto'>;
export type Consumable = SummaryRow['consumable'];

export interface SummaryQuery {
  readonly q?: string | undefined;
  readonly category?: string | undefined;
  readonly shade?: string | undefined;
  readonly locationId?: string | undefined;
  readonly sort?: 'consumable' | 'expiry' | 'value' | undefined;
  readonly cursor?: string | undefined;
  readonly limit?: number | undefined;
}

/** One line per consumable. */
export const summaryQuery = (asked: SummaryQuery) =>
  queryOptions({
    queryKey: ['stock', 'summary', asked],
    queryFn: ({ signal }) =>
      answerOf(api.GET('/api/stock/summary', { params: { query: given(asked) }, signal })),
    placeholderData: (before) => before,
  });

/** The line of one consumable; undefined when there is no such one. */
export const oneSummaryQuery = (consumableId: string) =>
  queryOptions({
    queryKey: ['stock', 'summary', { consumableId }],
    queryFn: async ({ signal }): Promise<SummaryRow | null> => {
      const query = { consumableId };
      const page = await answerOf(api.GET('/api/stock/summary', { params: { query }, signal }));
      return page.items[0] ?? null;
    },
  });
