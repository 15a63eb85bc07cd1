import { useMay } from '../../../app/session.js';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { ButtonLink } from '../../../ui/button-link.js';
import type { Column } from '../../../ui/data-table.js';
import { StatusMark } from '../../../ui/status-mark.js';
import { Amount, LotNumber, Money } from '../../../ui/values.js';
import type { Holding } from '../api/list-holdings.js';
import { nextAction, possibleActions } from '../holding/possible.js';
import { LastDay } from '../parts/last-day.js';
import { Second } from '../parts/second.js';
import css from './holdings.module.css';
import { STATUS_TONES } from './tones.js';

function LotCell({ row: { lot, receivedOn } }: { readonly row: Holding }) {
  const { holdings } = useText().shelves;
  const format = useFormat();
  return (
    <>
      <LotNumber value={lot.lotNumber} />
      <Second>{holdings.received(format.day(receivedOn))}</Second>
    </>
  );
}

function StateCell({ row: { status, openedOn, containers } }: { readonly row: Holding }) {
  const { statuses, holdings } = useText().shelves;
  const format = useFormat();
  return (
    <>
      <StatusMark tone={STATUS_TONES[status]}>{statuses[status]}</StatusMark>
      {openedOn !== null && <Second>{holdings.opened(format.day(openedOn))}</Second>}
      {containers !== null && <Second>{holdings.sealedContainers(containers)}</Second>}
    </>
  );
}

function UseByCell({ row: { effectiveExpiry, lot } }: { readonly row: Holding }) {
  const { holdings } = useText().shelves;
  const format = useFormat();
  return (
    <>
      <LastDay value={effectiveExpiry} />
      {lot.labelExpiry !== null && lot.labelExpiry !== effectiveExpiry && (
        <Second>{holdings.labelSays(format.day(lot.labelExpiry))}</Second>
      )}
    </>
  );
}

function TodoCell({ row }: { readonly row: Holding }) {
  const { shelves, ui } = useText();
  const next = nextAction(row, possibleActions(row, useMay()));
  const lot = row.lot.lotNumber ?? ui.notStated;
  const here = { holdingId: row.id, consumableId: row.consumable.id };
  return (
    <div className={`${css.todo ?? ''} tb-screen-only`}>
      {next && (
        <ButtonLink
          from="/shelves"
          to="/shelves"
          search={(old) => ({ ...old, ...here, do: next })}
          variant="default"
          aria-label={shelves.actionOn(shelves.actions[next], lot, row.location.name)}
        >
          {shelves.actions[next]}
        </ButtonLink>
      )}
      <ButtonLink
        from="/shelves"
        to="/shelves"
        search={(old) => ({ ...old, ...here, do: undefined })}
        variant="subtle"
        aria-label={shelves.holdings.moreAbout(lot, row.location.name)}
      >
        {shelves.holdings.more}
      </ButtonLink>
    </div>
  );
}

export function useHoldingColumns(): Column<Holding>[] {
  const { columns } = useText().shelves.holdings;
  return [
    { id: 'lot', head: columns.lot, cell: (row) => <LotCell row={row} /> },
    { id: 'location', head: columns.location, cell: (row) => row.location.name },
    { id: 'state', head: columns.state, cell: (row) => <StateCell row={row} /> },
    { id: 'useBy', head: columns.useBy, cell: (row) => <UseByCell row={row} /> },
    {
      id: 'amount',
      head: columns.amount,
      align: 'end',
      cell: (row) => <Amount value={row.onHand} unit={row.consumable.unit} />,
    },
    {
      id: 'value',
      head: columns.value,
      align: 'end',
      wideOnly: true,
      cell: (row) => <Money value={row.value} />,
    },
    { id: 'todo', head: columns.todo, align: 'end', cell: (row) => <TodoCell row={row} /> },
  ];
}
