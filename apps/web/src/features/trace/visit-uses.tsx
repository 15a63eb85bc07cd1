import { Link } from '@tanstack/react-router';
import { useMay } from '../../app/session.js';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { type Column, DataTable } from '../../ui/data-table.js';
import { Section } from '../../ui/section.js';
import { StatusMark } from '../../ui/status-mark.js';
import { Amount } from '../../ui/values.js';
import type { TracedUse, VisitTrace } from './api/trace-lot.js';
import { fullNameOf } from './full-name.js';
import { SurenessMark } from './marks.js';
import { teethOf } from './uses.js';
import css from './visits-section.module.css';

/** Every lot that one visit used, with the delivery it came in. */
export function VisitUses({ visit }: { readonly visit: VisitTrace }) {
  const t = useText();
  const may = useMay();
  const format = useFormat();
  const columns = useColumns();
  const words = t.trace.back;
  const hint = `${words.teeth(teethOf(visit.restorations))}. ${visit.dentist.name}.`;
  return (
    <Section
      title={words.visitOf(format.day(visit.visitedOn))}
      hint={visit.reversed ? words.reversed : hint}
      aside={
        may('visits.read') ? (
          <Link
            className="tb-screen-only"
            to="/visits/$visitId"
            params={{ visitId: visit.visitId }}
          >
            {words.openVisit}
          </Link>
        ) : undefined
      }
    >
      <DataTable
        label={words.visitOf(format.day(visit.visitedOn))}
        columns={columns}
        rows={visit.uses}
        rowKey={(use) => `${use.usageLineId} ${use.delivery.layerId} ${use.sureness}`}
        empty={<p className={css.none}>{words.nothingUsed}</p>}
      />
      <Shortfalls visit={visit} />
    </Section>
  );
}

function Shortfalls({ visit }: { readonly visit: VisitTrace }) {
  const t = useText();
  const format = useFormat();
  const words = t.trace.back;
  const open = visit.shortfalls.filter((one) => one.open !== '0');
  return open.map(({ id, consumable, open: missing, lot }) => {
    const quantity = format.quantity(missing, consumable.unit);
    const name = fullNameOf(consumable);
    const number = lot?.lotNumber ?? null;
    return (
      <p key={id} className={css.none}>
        <StatusMark tone="caution">
          {number === null
            ? words.notInBook(quantity, name)
            : words.notInBookLot(quantity, name, number)}
        </StatusMark>
      </p>
    );
  });
}

function useColumns(): Column<TracedUse>[] {
  const t = useText();
  const words = t.trace.back;
  return [
    { id: 'product', head: words.product, cell: (use) => fullNameOf(use.consumable) },
    { id: 'lot', head: words.lot, cell: (use) => <Lot use={use} /> },
    { id: 'delivery', head: words.delivery, cell: (use) => <Delivery use={use} /> },
    {
      ...{ id: 'supplier', head: words.supplier, wideOnly: true },
      cell: (use) => use.delivery.supplier.name,
    },
    {
      ...{ id: 'quantity', head: words.quantity, align: 'end' },
      cell: (use) => <Amount value={use.quantity} unit={use.consumable.unit} />,
    },
    {
      ...{ id: 'for', head: words.usedFor },
      cell: (use) => (use.usedFor === 'visit' ? words.forVisit : teethOf(use.restorations)),
    },
    { id: 'sure', head: words.sure, cell: (use) => <SurenessMark sureness={use.sureness} /> },
  ];
}

function Lot({ use: { lot } }: { readonly use: TracedUse }) {
  const t = useText();
  const { back, lotNotStated } = t.trace;
  return (
    <>
      <Link to="/trace" search={{ lotId: lot.id }}>
        {lot.lotNumber ?? lotNotStated}
      </Link>
      {lot.status !== 'released' && (
        <div>
          <StatusMark tone={lot.status === 'recalled' ? 'danger' : 'caution'}>
            {back[lot.status]}
          </StatusMark>
        </div>
      )}
    </>
  );
}

function Delivery({ use: { delivery } }: { readonly use: TracedUse }) {
  const may = useMay();
  const format = useFormat();
  const name = `${format.day(delivery.receivedOn)}, ${delivery.reference ?? ''}`.replace(/, $/, '');
  if (!may('deliveries.read')) return name;
  return (
    <Link to="/shelves/deliveries/$deliveryId" params={{ deliveryId: delivery.id }}>
      {name}
    </Link>
  );
}
