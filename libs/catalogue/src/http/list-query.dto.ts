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

export function listQuery(query: ListQueryDto): ListQuery {
  return {
    limit: pageLimit(query),
    cursor: query.cursor,
    q: query.q,
    active: query.active === undefined ? undefined : query.active === 'true',
  };
}
