import { Link } from '@tanstack/react-router';
import type { Shape } from '../../api/client.js';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { DataTable } from '../../ui/data-table.js';
import { Section } from '../../ui/section.js';
import { fullNameOf } from './full-name.js';
import { LotStatusMark } from './marks.js';
import css from './relations-section.module.css';

type Lot = Shape<'LotDto'>;
type Damaged = Shape<'DamagedPacksDto'>;

/** The kits in which the lot came, each with the lots of its other parts: they are recalled together. */
export function KitsSection({ lot }: { readonly lot: Lot }) {
  const t = useText();
  const words = t.trace.kits;
  return lot.kits.map((kit) => (
    <Section
      key={kit.kitLotId}
      title={kit.lotNumber === null ? words.unnamed : words.title(kit.lotNumber)}
      hint={words.hint(kit.presentationName)}
    >
      <DataTable
        label={words.parts}
        rows={kit.parts}
        rowKey={(part) => part.lotId}
        columns={[
          {
            ...{ id: 'lot', head: t.trace.back.lot },
            cell: (part) => (
              <Link to="/trace" search={{ lotId: part.lotId }}>
                {part.lotNumber ?? t.trace.lotNotStated}
              </Link>
            ),
          },
          {
            ...{ id: 'product', head: t.trace.back.product },
            cell: (part) => fullNameOf(part.consumable),
          },
          {
            ...{ id: 'status', head: t.trace.status },
            cell: (part) => <LotStatusMark status={part.status as Lot['status']} />,
          },
        ]}
      />
    </Section>
  ));
}

/** Goods that were booked under a wrong number for a while: who looks for one has to see the other. */
export function CorrectionsSection({ lot }: { readonly lot: Lot }) {
  const t = useText();
  const format = useFormat();
  const words = t.trace.corrections;
  if (lot.corrections.length === 0) return null;
  return (
    <Section title={words.title} hint={words.hint}>
      <ul className={css.list}>
        {lot.corrections.map((each) => (
          <li key={`${each.deliveryId} ${each.lineNumber} ${each.lotId} ${each.way}`}>
            {`${words.ways[each.way]} `}
            <Link to="/trace" search={{ lotId: each.lotId }}>
              {each.lotNumber === null ? t.trace.lotNotStated : t.trace.lot(each.lotNumber)}
            </Link>
            {`. ${words.left(format.amount(each.leftUnderWrongLot, lot.consumable.unit))} ${each.note}`}
          </li>
        ))}
      </ul>
    </Section>
  );
}

/** Packs with this number that came damaged and never became stock. */
export function DamagedSection({ damaged }: { readonly damaged: readonly Damaged[] }) {
  const t = useText();
  const format = useFormat();
  const words = t.trace.damaged;
  if (damaged.length === 0) return null;
  return (
    <Section title={words.title}>
      <ul className={css.list}>
        {damaged.map((each) => (
          <li key={`${each.deliveryId} ${each.presentationName} ${each.lotNumber}`}>
            {`${words.row(each.packs, fullNameOf(each.consumable), each.lotNumber)} `}
            <Link to="/shelves/deliveries/$deliveryId" params={{ deliveryId: each.deliveryId }}>
              {words.delivery(each.supplierName, format.day(each.receivedOn))}
            </Link>
          </li>
        ))}
      </ul>
    </Section>
  );
}
