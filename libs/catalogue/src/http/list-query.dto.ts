import { ChoiceField, PageQuery, pageLimit, TextField } from '#lib/platform';
import type { ListQuery } from '../db/page-by-name.js';

/** Query of every list of master data. */
export class ListQueryDto extends PageQuery {
  @TextField(200, { optional: true, description: 'Text that the name contains, in any case.' })
  q?: string;

  @ChoiceField(['true', 'false'], {
    optional: true,
    description: 'Only what is in use, or only what is not; both when left out.',
  })
  active?: string;
}

/** `?sort=`: by one of these, with '-' before it the other way round. */
export const bothWays = <const T extends string>(...sorts: readonly T[]): (T | `-${T}`)[] =>
  sorts.flatMap((sort) => [sort, `-${sort}` as const]);

export function listQuery(query: ListQueryDto & { readonly sort?: string }): ListQuery {
  return {
    limit: pageLimit(query),
    cursor: query.cursor,
    q: query.q,
    sort: query.sort,
    active: query.active === undefined ? undefined : query.active === 'true',
  };
}
