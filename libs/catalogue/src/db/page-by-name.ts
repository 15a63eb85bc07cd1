import type { EntityTarget, SelectQueryBuilder } from 'typeorm';
import { decodeCursor, isId, type Page, refuse, type Tx, toPage } from '#lib/platform';

/** What may be asked of every list of master data. */
export interface ListQuery {
  readonly limit: number;
  readonly cursor?: string | undefined;
  /** Text that the name contains, in any case. */
  readonly q?: string | undefined;
  readonly active?: boolean | undefined;
}

interface Named {
  readonly id: string;
  readonly name: string;
}

interface Listing<E extends Named, V> {
  readonly entity: EntityTarget<E>;
  readonly query: ListQuery;
  /** Properties, besides the name, in which `q` is looked for. */
  readonly searched?: readonly (keyof E & string)[];
  readonly narrow?: (rows: SelectQueryBuilder<E>) => void;
  readonly toView: (row: E) => V;
}

/** One page of a list in the order of names. */
export async function pageByName<E extends Named, V>(
  tx: Tx,
  listing: Listing<E, V>,
): Promise<Page<V>> {
  const { query, searched = [] } = listing;
  const rows = tx.manager.createQueryBuilder(listing.entity, 'row');
  if (query.q !== undefined) {
    const found = ['name', ...searched].map(
      (field) => `strpos(lower(row.${field}), lower(:q)) > 0`,
    );
    rows.andWhere(`(${found.join(' OR ')})`, { q: query.q.trim() });
  }
  if (query.active !== undefined) rows.andWhere('row.active = :active', { active: query.active });
  listing.narrow?.(rows);
  if (query.cursor !== undefined) {
    const [name, id] = decodeCursor(query.cursor, 2);
    if (!isId(id)) throw notACursor();
    rows.andWhere('(lower(row.name), row.id) > (lower(:afterName), CAST(:afterId AS uuid))', {
      afterName: String(name),
      afterId: id,
    });
  }
  rows
    .orderBy('lower(row.name)')
    .addOrderBy('row.id')
    .limit(query.limit + 1);
  return toPage(await rows.getMany(), query.limit, listing.toView, (row) => [row.name, row.id]);
}

function notACursor() {
  return refuse('invalid_request', 'The cursor is not one that this service gave out.', [
    { field: 'cursor', message: 'is not a cursor of this list' },
  ]);
}
