import { Link } from '@tanstack/react-router';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import type { Column } from '../../../ui/data-table.js';
import { RowButton } from '../../../ui/row-button.js';
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
      <About line={line} />
    </>
  );
}

/** What is special about it: a sample, a kit, a correction. */
function About({ line }: Props) {
  const { deliveryMore: words } = useText();
  const { continuesLine, replacesLine, correctionNote: note } = line;
  const about = [
    line.sample ? words.sample : '',
    line.kit ? words.kit(line.kit.lotNumber) : '',
    continuesLine === null ? '' : words.continues(continuesLine, note ?? ''),
    replacesLine === null ? '' : words.replaces(replacesLine, note ?? ''),
  ].filter((part) => part !== '');
  return about.map((part) => <Second key={part}>{part}</Second>);
}

function Lot({ line: { lot } }: Props) {
  const { line: words } = useText().deliveries;
  const format = useFormat();
  return (
    <>
      <span className={css.line}>
        <LotNumber value={lot.lotNumber} />
      </span>
      {lot.labelExpiry !== null && (
        <Second>
          <span className={css.line}>{words.expires(format.day(lot.labelExpiry))}</span>
        </Second>
      )}
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

function Correct({ line, onCorrect }: Props & { readonly onCorrect: OnCorrect }) {
  const { deliveryMore: words } = useText();
  const label = words.correctLine(line.lineNumber, nameOf(line.consumable));
  return (
    <RowButton label={label} onClick={() => onCorrect(line)}>
      {words.correct}
    </RowButton>
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

type OnCorrect = (line: DeliveryLine) => void;

/** With `onCorrect`, lines of which something is left can be corrected. */
export function useLineColumns(onCorrect: OnCorrect | undefined): Column<DeliveryLine>[] {
  const { line: words } = useText().deliveries;
  const correct = (line: DeliveryLine) =>
    onCorrect && !line.undone && line.remaining !== '0' ? (
      <Correct line={line} onCorrect={onCorrect} />
    ) : null;
  return [
    { id: 'what', head: words.what, cell: (line) => <What line={line} /> },
    { id: 'lot', head: words.lot, cell: (line) => <Lot line={line} /> },
    { id: 'location', head: words.location, cell: (line) => line.location.name },
    { id: 'packs', head: words.packs, align: 'end', cell: (line) => <Packs line={line} /> },
    { id: 'landed', head: words.landed, align: 'end', cell: (line) => <Landed line={line} /> },
    { id: 'left', head: words.left, align: 'end', cell: (line) => <Left line={line} /> },
    {
      ...{ id: 'ways', head: words.balance, bare: true, align: 'end' },
      cell: (line) => (
        <span className={css.ways}>
          <Balance line={line} />
          {correct(line)}
        </span>
      ),
    },
  ];
}
