import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

interface Page<Row> {
  readonly items: readonly Row[];
  readonly nextCursor: string | null;
}

async function allPages<Row>(page: (cursor?: string) => Promise<Page<Row>>): Promise<Row[]> {
  const rows: Row[] = [];
  let cursor: string | undefined;
  do {
    const answer = await page(cursor);
    rows.push(...answer.items);
    cursor = answer.nextCursor ?? undefined;
  } while (cursor !== undefined);
  return rows;
}

export interface PriceBook {
  readonly stock: readonly Shape<'StockSummaryDto'>[];
  readonly presentations: readonly Shape<'PresentationDto'>[];
}

/** What is needed to say what something costs: the value of the stock, and the list prices. */
export const pricesQuery = queryOptions({
  queryKey: ['stock', 'prices'],
  queryFn: async ({ signal }): Promise<PriceBook> => {
    const limit = 500;
    const [stock, presentations] = await Promise.all([
      allPages((cursor) => {
        const query = cursor === undefined ? { limit } : { limit, cursor };
        return answerOf(api.GET('/api/stock/summary', { params: { query }, signal }));
      }),
      allPages((cursor) => {
        const active = 'true' as const;
        const query = cursor === undefined ? { limit, active } : { limit, active, cursor };
        return answerOf(api.GET('/api/presentations', { params: { query }, signal }));
      }),
    ]);
    return { stock, presentations };
  },
  staleTime: 5 * 60_000,
});
