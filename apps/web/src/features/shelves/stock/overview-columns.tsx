import { Link } from '@tanstack/react-router';
import { useText } from '../../../text/text-provider.js';
import type { Column } from '../../../ui/data-table.js';
import { Amount, Money } from '../../../ui/values.js';
import type { SummaryRow } from '../api/list-summary.js';
import { LastDay } from '../parts/last-day.js';
import css from '../parts/parts.module.css';
import { Second } from '../parts/second.js';
import { LevelMarks } from './level-marks.js';

type Sort = 'consumable' | 'expiry' | 'value';

function Name({ row: { consumable } }: { readonly row: SummaryRow }) {
  const { id, name, shade, size, grit, category } = consumable;
  const rest = [size, grit, category].filter((part) => part !== null && part !== '');
  return (
    <>
      <Link
        from="/shelves"
        to="/shelves"
        search={(old) => ({ ...old, consumableId: id })}
        className={css.name}
      >
        {shade === null ? name : `${name}, ${shade}`}
      </Link>
      <Second>{rest.join(' · ')}</Second>
    </>
  );
}

function Usable({ row }: { readonly row: SummaryRow }) {
  const t = useText();
  return (
    <>
      <Amount value={row.usable} unit={row.consumable.unit} rough />
      {row.openedContainers > 0 && (
        <Second>{t.shelves.openContainers(row.openedContainers)}</Second>
      )}
    </>
  );
}

function Blocked({ row }: { readonly row: SummaryRow }) {
  if (row.blocked === '0') return <span className={css.quiet}>–</span>;
  return (
    <strong>
      <Amount value={row.blocked} unit={row.consumable.unit} rough />
    </strong>
  );
}

/** What is not there does not expire. */
function Expiry({ row }: { readonly row: SummaryRow }) {
  if (row.usable === '0') return <span className={css.quiet}>–</span>;
  return <LastDay value={row.earliestExpiry} />;
}

/** Of one place there is no level: the order point is of the whole practice. */
export function useOverviewColumns(ofOnePlace: boolean): Column<SummaryRow, Sort>[] {
  const { columns } = useText().shelves;
  const level: Column<SummaryRow, Sort> = {
    id: 'level',
    head: columns.level,
    cell: (row) => <LevelMarks row={row} />,
  };
  return [
    {
      id: 'consumable',
      head: columns.consumable,
      sort: 'consumable',
      cell: (row) => <Name row={row} />,
    },
    { id: 'usable', head: columns.usable, align: 'end', cell: (row) => <Usable row={row} /> },
    { id: 'blocked', head: columns.blocked, align: 'end', cell: (row) => <Blocked row={row} /> },
    {
      id: 'expiry',
      head: columns.expiry,
      sort: 'expiry',
      cell: (row) => <Expiry row={row} />,
    },
    ...(ofOnePlace ? [] : [level]),
    {
      id: 'value',
      head: columns.value,
      align: 'end',
      sort: 'value',
      descending: true,
      cell: (row) => <Money value={row.value} />,
    },
  ];
}
