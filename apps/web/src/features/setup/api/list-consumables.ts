import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';
import { activeFlag, type Shown } from '../../../ui/shown.js';
import type { ConsumableSort } from '../sorts.js';

export type Consumable = Shape<'ConsumableDto'>;

interface Search {
  readonly q?: string | undefined;
  readonly category?: string | undefined;
  readonly show?: Shown | undefined;
  readonly sort?: ConsumableSort | undefined;
  readonly cursor?: string | undefined;
  readonly limit?: number;
}

export const consumablesQuery = ({ q, category, show, sort, cursor, limit = 50 }: Search) =>
  queryOptions({
    queryKey: ['consumables', 'list', { q, category, show, sort, cursor, limit }],
    queryFn: ({ signal }): Promise<Shape<'ConsumablePageDto'>> => {
      const query = {
        limit,
        ...activeFlag(show),
        ...(q === undefined ? {} : { q }),
        ...(category === undefined ? {} : { category }),
        ...(sort === undefined ? {} : { sort }),
        ...(cursor === undefined ? {} : { cursor }),
      };
      return answerOf(api.GET('/api/consumables', { params: { query }, signal }));
    },
    placeholderData: (before) => before,
  });
