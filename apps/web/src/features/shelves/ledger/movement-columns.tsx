import { Link } from '@tanstack/react-router';
import { useMay } from '../../../app/session.js';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { ButtonLink } from '../../../ui/button-link.js';
import type { Column } from '../../../ui/data-table.js';
import { StatusMark } from '../../../ui/status-mark.js';
import { Amount, Day, Money } from '../../../ui/values.js';
import type { Movement } from '../api/list-movements.js';
import type { Place } from '../api/list-places.js';
import css from '../parts/parts.module.css';
import { Second } from '../parts/second.js';
import { nameOf } from '../parts/what.js';
import own from './ledger.module.css';
import { canReverse, kindWords, sideWords } from './words.js';

const PATH = '/shelves/movements';

interface Props {
  readonly row: Movement;
}

function Kind({ row }: Props) {
  const t = useText();
  const sureness: Readonly<Record<string, string>> = t.movements.sureness;
  const { settles, outOfOrder } = t.movements;
  const notes = [
    row.sureness === null ? '' : (sureness[row.sureness] ?? row.sureness),
    row.outOfOrder ? outOfOrder : '',
    row.shortfallId === null ? '' : settles,
  ].filter((note) => note !== '');
  return (
    <>
      <span className={css.name}>{kindWords(row, t)}</span>
      {notes.length > 0 && <Second>{notes.join(' · ')}</Second>}
      {row.reversedById !== null && (
        <Second>
          <StatusMark tone="caution">{t.movements.reversed}</StatusMark>
        </Second>
      )}
    </>
  );
}

function What({ row: { consumable, lot, layerId } }: Props) {
  const { movements, ui } = useText();
  return (
    <>
      {nameOf(consumable)}
      <Second>
        <Link from={PATH} to={PATH} search={{ layerId }}>
          {movements.lot(lot.lotNumber ?? ui.notStated)}
        </Link>
      </Second>
    </>
  );
}

function Path({ row, places }: Props & { readonly places: readonly Place[] }) {
  const t = useText();
  return (
    <>
      <Side row={row} of="from" places={places} />
      <span className={own.arrow}>
        <span className={own.hidden}> {t.movements.to} </span>
        <span aria-hidden="true"> → </span>
      </span>
      <Side row={row} of="to" places={places} />
      {row.note !== null && <Second>{t.movements.note(row.note)}</Second>}
    </>
  );
}

interface SideProps extends Props {
  readonly of: 'from' | 'to';
  readonly places: readonly Place[];
}

function Side({ row, of, places }: SideProps) {
  const t = useText();
  const may = useMay();
  const side = row[of];
  const words = sideWords(side, row, places, t);
  if (side.account !== 'visit' || row.visitId === null || !may('visits.read')) return words;
  return (
    <Link to="/visits/$visitId" params={{ visitId: row.visitId }}>
      {words}
    </Link>
  );
}

function Todo({ row }: Props) {
  const t = useText();
  const format = useFormat();
  if (!canReverse(row)) return null;
  const { consumable, quantity, occurredOn } = row;
  return (
    <div className={`${own.todo ?? ''} tb-screen-only`}>
      <ButtonLink
        from={PATH}
        to={PATH}
        search={(old) => ({ ...old, undo: row.id })}
        variant="subtle"
        aria-label={t.movements.reverseOne(
          kindWords(row, t),
          format.quantity(quantity, consumable.unit),
          nameOf(consumable),
          format.day(occurredOn),
        )}
      >
        {t.movements.reverse}
      </ButtonLink>
    </div>
  );
}

/** Moving inside the practice costs nothing: no figure there. */
function Cost({ row }: Props) {
  if (row.from.account === 'location' && row.to.account === 'location') {
    return <span className={css.quiet}>–</span>;
  }
  return <Money value={row.cost} />;
}

export function useMovementColumns(
  places: readonly Place[],
  mayReverse: boolean,
): Column<Movement>[] {
  const { columns } = useText().movements;
  const todo: Column<Movement> = {
    ...{ id: 'todo', head: columns.todo, align: 'end' },
    cell: (row) => <Todo row={row} />,
  };
  return [
    { id: 'day', head: columns.day, cell: (row) => <Day value={row.occurredOn} /> },
    { id: 'kind', head: columns.kind, cell: (row) => <Kind row={row} /> },
    { id: 'what', head: columns.what, cell: (row) => <What row={row} /> },
    { id: 'path', head: columns.path, cell: (row) => <Path row={row} places={places} /> },
    {
      id: 'quantity',
      head: columns.quantity,
      align: 'end',
      cell: (row) => <Amount value={row.quantity} unit={row.consumable.unit} />,
    },
    { id: 'cost', head: columns.cost, align: 'end', cell: (row) => <Cost row={row} /> },
    { id: 'by', head: columns.by, wideOnly: true, cell: (row) => row.recordedBy.name },
    ...(mayReverse ? [todo] : []),
  ];
}
