import { Button, VisuallyHidden } from '@mantine/core';
import type { ReactNode } from 'react';
import { useText } from '../text/text-provider.js';
import css from './data-table.module.css';
import { EmptyState } from './empty-state.js';
import { useScrollStop } from './use-scroll-stop.js';

export interface Column<Row, Sort extends string = string> {
  readonly id: string;
  readonly head: string;
  /** The cells speak for themselves: the head is only for who does not see them. */
  readonly bare?: boolean;
  readonly cell: (row: Row) => ReactNode;
  /** 'end' for numbers. */
  readonly align?: 'end';
  /** What the service calls sorting by this column, and which way it then goes. */
  readonly sort?: Sort;
  readonly descending?: boolean;
  /** Left out on a tablet in portrait. */
  readonly wideOnly?: boolean;
}

interface Props<Row, Sort extends string> {
  readonly label: string;
  readonly columns: readonly Column<Row, Sort>[];
  readonly rows: readonly Row[];
  readonly rowKey: (row: Row) => string;
  /** The row that the address points to. */
  readonly marked?: string | undefined;
  /** What the address says; undefined is the service's own order. */
  readonly sort?: Sort | undefined;
  readonly onSort?: (sort: Sort) => void;
  /** The service can turn the order of every column round, by a '-' before its name. */
  readonly bothWays?: boolean;
  /** Paging on the server: the cursor in the address, the next one from the service. */
  readonly cursor?: string | undefined;
  readonly nextCursor?: string | null;
  readonly onCursor?: (cursor: string | undefined) => void;
  /** The rows are of the address before; new ones are on their way. */
  readonly stale?: boolean;
  readonly empty?: ReactNode;
}

/** A phone shows so many columns side by side; of more, each row becomes a block. */
const FEW = 3;

/** A list that the service sorts, filters and pages; the state of all of it is in the address. */
export function DataTable<Row, Sort extends string = string>(props: Props<Row, Sort>) {
  const t = useText();
  const { label, columns, rows, rowKey } = props;
  const scroller = useScrollStop();
  if (rows.length === 0 && props.cursor === undefined) {
    return (
      <>{props.empty ?? <EmptyState title={t.ui.emptySearch} hint={t.ui.emptySearchHint} />}</>
    );
  }
  return (
    <>
      <section ref={scroller} className={css.scroller} aria-label={label}>
        <table
          className={css.table}
          aria-label={label}
          aria-busy={props.stale ?? false}
          data-stack={columns.filter(({ wideOnly }) => !wideOnly).length > FEW || undefined}
        >
          <thead>
            <tr>
              {columns.map((column) => (
                <Head key={column.id} column={column} table={props} />
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={rowKey(row)} data-marked={rowKey(row) === props.marked || undefined}>
                {columns.map((column) => (
                  <td
                    key={column.id}
                    data-align={column.align}
                    data-wide={column.wideOnly || undefined}
                    data-head={column.bare ? undefined : column.head}
                  >
                    {column.cell(row)}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <Pager {...props} />
    </>
  );
}

interface HeadProps<Row, Sort extends string> {
  readonly column: Column<Row, Sort>;
  readonly table: Props<Row, Sort>;
}

function Head<Row, Sort extends string>({ column, table }: HeadProps<Row, Sort>) {
  const t = useText();
  const { head, bare = false, align, sort, descending = false, wideOnly } = column;
  const { onSort } = table;
  const marks = { 'data-align': align, 'data-wide': wideOnly || undefined };
  if (sort === undefined || onSort === undefined) {
    return (
      <th scope="col" {...marks}>
        {bare ? <VisuallyHidden>{head}</VisuallyHidden> : head}
      </th>
    );
  }
  const turned = table.sort === `-${sort}`;
  const active = turned || table.sort === sort;
  const falls = turned ? !descending : descending;
  const direction = falls ? 'descending' : 'ascending';
  // What the service names so is in Sort as well where it sorts both ways.
  const next = table.bothWays && table.sort === sort ? (`-${sort}` as Sort) : sort;
  return (
    <th scope="col" aria-sort={active ? direction : 'none'} {...marks}>
      <button
        type="button"
        className={css.sort}
        title={t.ui.sortedBy(head)}
        onClick={() => onSort(next)}
      >
        {head}
        <svg viewBox="0 0 8 10" aria-hidden="true" data-active={active || undefined}>
          <path d={falls ? 'M1 3l3 4 3-4' : 'M1 7l3-4 3 4'} />
        </svg>
      </button>
    </th>
  );
}

function Pager<Row, Sort extends string>(props: Props<Row, Sort>) {
  const t = useText();
  const { cursor, nextCursor, onCursor } = props;
  if (!onCursor || (cursor === undefined && !nextCursor)) return null;
  return (
    <div className={`${css.pager ?? ''} tb-screen-only`}>
      {cursor !== undefined && (
        <Button variant="default" onClick={() => onCursor(undefined)}>
          {t.ui.firstPage}
        </Button>
      )}
      {nextCursor && (
        <Button variant="default" onClick={() => onCursor(nextCursor)}>
          {t.ui.nextPage}
        </Button>
      )}
    </div>
  );
}
