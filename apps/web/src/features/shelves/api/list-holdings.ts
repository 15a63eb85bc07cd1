import { infiniteQueryOptions, queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';
import { given } from './given.js';

export type Holding = Shape<'StockHoldingDto'>;

const PAGE = 100;

/** What there is of one consumable, the soonest to go first. */
export const holdingsQuery = (consumableId: string, cursor: string | undefined) =>
  queryOptions({
    queryKey: ['stock', 'holdings', { consumableId, cursor }],
    queryFn: ({ signal }) => {
      const query = given({ consumableId, sort: 'expiry' as const, limit: PAGE, cursor });
      return answerOf(api.GET('/api/stock', { params: { query }, signal }));
    },
    placeholderData: (before) => before,
  });

/** One holding; null when nothing of it is left. */
export const holdingQuery = (holdingId: string) =>
  queryOptions({
    queryKey: ['stock', 'holding', holdingId],
    queryFn: async ({ signal }): Promise<Holding | null> => {
      const query = { holdingId };
      const page = await answerOf(api.GET('/api/stock', { params: { query }, signal }));
      return page.items[0] ?? null;
    },
  });

/** What there is of one lot, wherever it is. */
export const lotHoldingsQuery = (lotId: string) =>
  queryOptions({
    queryKey: ['stock', 'lot', lotId],
    queryFn: async ({ signal }): Promise<readonly Holding[]> => {
      const query = { lotId, limit: PAGE };
      return (await answerOf(api.GET('/api/stock', { params: { query }, signal }))).items;
    },
  });

export interface CountScope {
  readonly consumableId?: string | undefined;
  readonly locationId?: string | undefined;
}

/** Everything that a count goes through, page after page. */
export const countedQuery = ({ consumableId, locationId }: CountScope) =>
  infiniteQueryOptions({
    queryKey: ['stock', 'counted', { consumableId, locationId }],
    queryFn: ({ signal, pageParam }) => {
      const cursor = pageParam === '' ? undefined : pageParam;
      const query = given({ limit: PAGE, consumableId, locationId, cursor });
      return answerOf(api.GET('/api/stock', { params: { query }, signal }));
    },
    initialPageParam: '',
    getNextPageParam: (last) => last.nextCursor,
    enabled: consumableId !== undefined || locationId !== undefined,
    // Nobody's list changes under their hands while they count.
    staleTime: Number.POSITIVE_INFINITY,
  });
