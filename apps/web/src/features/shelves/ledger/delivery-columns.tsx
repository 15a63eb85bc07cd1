import { Link } from '@tanstack/react-router';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import type { Column } from '../../../ui/data-table.js';
import { Amount, LotNumber, Money } from '../../../ui/values.js';
import type { DeliveryLine } from '../api/get-delivery.js';
import css from '../parts/parts.module.css';
import { Second } from '../parts/second.js';
import { nameOf } from '../parts/what.js';
import { unitCost } from './unit-cost.js';

interface Props {
  readonly line: DeliveryLine;
}

function What({ line }: Props) {
  return (
    <>
      <Link to="/shelves" search={{ consumableId: line.consumable.id }} className={css.name}>
        {nameOf(line.consumable)}
      </Link>
      <Second>{line.presentationName}</Second>
    </>
  );
}

function Lot({ line: { lot } }: Props) {
  const { line: words } = useText().deliveries;
  const format = useFormat();
  return (
    <>
      <LotNumber value={lot.lotNumber} />
      {lot.labelExpiry !== null && <Second>{words.expires(format.day(lot.labelExpiry))}</Second>}
    </>
  );
}

function Packs({ line }: Props) {
  const format = useFormat();
  return (
    <>
      <span className={css.line}>{`${line.packs} × ${format.money(line.packPrice)}`}</span>
      <Second>{format.quantity(line.quantity, line.consumable.unit)}</Second>
    </>
  );
}

function Landed({ line }: Props) {
  const format = useFormat();
  const each = unitCost(line.landedCost, line.quantity);
  return (
    <>
      <Money value={line.landedCost} />
      {each !== undefined && (
        <Second>
          <span className={css.line}>
            {`${format.number(each)} ${format.currency}/${format.unitName('1', line.consumable.unit)}`}
          </span>
        </Second>
      )}
    </>
  );
}

function Left({ line }: Props) {
  return (
    <>
      <Amount value={line.remaining} unit={line.consumable.unit} />
      <Second>
        <Money value={line.remainingValue} />
      </Second>
    </>
  );
}

function Balance({ line }: Props) {
  const { line: words } = useText().deliveries;
  return (
    <Link
      to="/shelves/movements"
      search={{ layerId: line.layerId }}
      aria-label={words.balanceOf(nameOf(line.consumable))}
      className="tb-screen-only"
    >
      {words.balance}
    </Link>
  );
}

export function useLineColumns(): Column<DeliveryLine>[] {
  const { line: words } = useText().deliveries;
  return [
    { id: 'what', head: words.what, cell: (line) => <What line={line} /> },
    { id: 'lot', head: words.lot, cell: (line) => <Lot line={line} /> },
    { id: 'location', head: words.location, cell: (line) => line.location.name },
    { id: 'packs', head: words.packs, align: 'end', cell: (line) => <Packs line={line} /> },
    { id: 'landed', head: words.landed, align: 'end', cell: (line) => <Landed line={line} /> },
    { id: 'left', head: words.left, align: 'end', cell: (line) => <Left line={line} /> },
    { id: 'balance', head: words.balance, align: 'end', cell: (line) => <Balance line={line} /> },
  ];
}
