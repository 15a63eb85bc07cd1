import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type LotFound = Shape<'LotSummaryDto'>;

export interface Found {
  /** Packs with this number that came damaged and never became stock. */
  readonly damaged: readonly Shape<'DamagedPacksDto'>[];
  /** Whose whole number this is. */
  readonly lots: readonly LotFound[];
  /** As it stands in the book; undefined when no visit has it. */
  readonly chart: string | undefined;
  /** Whose number begins with it; only looked for when nothing is called exactly this. */
  readonly begins: readonly LotFound[];
  /** There are more lots than are listed. */
  readonly more: boolean;
}

/** What in the book is called by these words: lots, a chart reference, or nothing. */
export const findQuery = (words: string) =>
  queryOptions({
    queryKey: ['lots', 'found', words],
    queryFn: async ({ signal }): Promise<Found> => {
      const [lots, visits] = await Promise.all([
        answerOf(api.GET('/api/lots', { params: { query: { number: words } }, signal })),
        answerOf(
          api.GET('/api/visits', {
            params: { query: { chartReference: words, limit: 1 } },
            signal,
          }),
        ),
      ]);
      const chart = visits.items[0]?.chartReference;
      const { damaged } = lots;
      if (lots.items.length > 0 || chart !== undefined) {
        return { lots: lots.items, chart, damaged, begins: [], more: lots.nextCursor !== null };
      }
      const query = { q: words, limit: 20 };
      const begins = await answerOf(api.GET('/api/lots', { params: { query }, signal }));
      const more = begins.nextCursor !== null;
      return { lots: [], chart, damaged, begins: begins.items, more };
    },
  });
