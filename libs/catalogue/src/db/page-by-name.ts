import type { EntityTarget, SelectQueryBuilder } from 'typeorm';
import { decodeCursor, isId, type Page, refuse, type Tx, toPage } from '#lib/platform';

/** What may be asked of every list of master data. */
export interface ListQuery {
  readonly limit: number;
  readonly cursor?: string | undefined;
  /** Text that the name contains, in any case. */
  readonly q?: string | undefined;
  readonly active?: boolean | undefined;
  /** One of the listing's `sorts` or 'name', with '-' before it for the other way round. */
  readonly sort?: string | undefined;
}

interface Named {
  readonly id: string;
  readonly name: string;
}

/** What else than the name a list can be sorted by; what is not stated comes first. */
export interface SortColumn<E> {
  /** The column of the table. */
  readonly column: string;
  readonly kind: 'text' | 'number';
  readonly valueOf: (row: E) => string | number | null;
}

interface Listing<E extends Named, V> {
  readonly entity: EntityTarget<E>;
  readonly query: ListQuery;
  /** Properties, besides the name, in which `q` is looked for. */
  readonly searched?: readonly (keyof E & string)[];
  readonly sorts?: Readonly<Record<string, SortColumn<E>>>;
  readonly narrow?: (rows: SelectQueryBuilder<E>) => void;
  readonly toView: (row: E) => V;
}

/** One page of a list in the order of names, or of what was asked for and then of names. */
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
  const order = orderOf(listing);
  if (query.cursor !== undefined) startAfter(rows, order, query.cursor);
  rows.orderBy(order.key(order.column), order.direction);
  rows.addOrderBy('lower(row.name)', order.direction).addOrderBy('row.id', order.direction);
  rows.limit(query.limit + 1);
  return toPage(await rows.getMany(), query.limit, listing.toView, (row) => [
    order.valueOf(row),
    row.name,
    row.id,
  ]);
}

interface Order<E> {
  readonly column: string;
  readonly kind: 'text' | 'number';
  readonly key: (sql: string) => string;
  readonly valueOf: (row: E) => string;
  readonly direction: 'ASC' | 'DESC';
}

function orderOf<E extends Named, V>({ query, sorts = {} }: Listing<E, V>): Order<E> {
  const sort = query.sort ?? 'name';
  const name = sort.replace(/^-/, '');
  const direction = sort.startsWith('-') ? 'DESC' : 'ASC';
  const wanted = sorts[name];
  if (wanted === undefined && name !== 'name') throw new Error(`There is no order by ${name}.`);
  const byName: SortColumn<E> = { column: 'name', kind: 'text', valueOf: (row) => row.name };
  const by = wanted ?? byName;
  const { kind } = by;
  const none = kind === 'number' ? '-1' : '';
  const key = (sql: string) =>
    kind === 'number' ? `coalesce(CAST(${sql} AS numeric), -1)` : `lower(coalesce(${sql}, ''))`;
  return {
    ...{ column: `row.${by.column}`, kind, key, direction },
    valueOf: (row) => String(by.valueOf(row) ?? none),
  };
}

function startAfter<E extends Named>(
  rows: SelectQueryBuilder<E>,
  order: Order<E>,
  cursor: string,
): void {
  const [key, name, id] = decodeCursor(cursor, 3);
  if (!isId(id)) throw notACursor();
  if (order.kind === 'number' && !/^-?\d+(\.\d+)?$/.test(String(key))) throw notACursor();
  const afterKey = order.key('CAST(:afterKey AS text)');
  const after = `(${afterKey}, lower(:afterName), CAST(:afterId AS uuid))`;
  const compare = order.direction === 'ASC' ? '>' : '<';
  rows.andWhere(`(${order.key(order.column)}, lower(row.name), row.id) ${compare} ${after}`, {
    afterKey: String(key),
    afterName: String(name),
    afterId: id,
  });
}

function notACursor() {
  return refuse('invalid_request', 'The cursor is not one that this service gave out.', [
    { field: 'cursor', message: 'is not a cursor of this list' },
  ]);
}
