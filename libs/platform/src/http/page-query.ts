import { TextField, WholeQuery } from './fields.js';

/** Query of every long list: how many rows, and where the last page ended. */
export class PageQuery {
  @WholeQuery(1, 500, { description: 'Rows per page; 50 when not given.' })
  limit?: string;

  @TextField(2000, { optional: true, description: 'nextCursor of the page before.' })
  cursor?: string;
}

export function pageLimit(query: PageQuery): number {
  return query.limit === undefined ? 50 : Number(query.limit);
}
