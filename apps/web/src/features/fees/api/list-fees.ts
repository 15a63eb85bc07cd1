import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';
import { activeFlag, type Shown } from '../../../ui/shown.js';

export type Fee = Shape<'FeeDto'>;
export type FeeHistory = Shape<'FeeHistoryDto'>;
export type FeeVersion = Shape<'FeeVersionDto'>;

interface Search {
  readonly q?: string | undefined;
  readonly show?: Shown | undefined;
  /** The day of the price; today when left out. */
  readonly on?: string | undefined;
  readonly cursor?: string | undefined;
  readonly limit?: number;
}

export const feesQuery = ({ q, show, on, cursor, limit = 50 }: Search) =>
  queryOptions({
    queryKey: ['fees', 'list', { q, show, on, cursor, limit }],
    queryFn: ({ signal }): Promise<Shape<'FeePageDto'>> => {
      const query = {
        limit,
        ...activeFlag(show),
        ...(q === undefined ? {} : { q }),
        ...(on === undefined ? {} : { on }),
        ...(cursor === undefined ? {} : { cursor }),
      };
      return answerOf(api.GET('/api/fees', { params: { query }, signal }));
    },
    placeholderData: (before) => before,
  });

/** Every fee, for choosing one and for telling what a plan's terms mean. */
export const allFeesQuery = (on?: string) => feesQuery({ show: 'all', on, limit: 500 });

export const feeQuery = (id: string) =>
  queryOptions({
    queryKey: ['fees', 'one', id],
    queryFn: ({ signal }): Promise<FeeHistory> =>
      answerOf(api.GET('/api/fees/{id}', { params: { path: { id } }, signal })),
  });
