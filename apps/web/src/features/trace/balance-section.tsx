import { Link } from '@tanstack/react-router';
import type { Shape } from '../../api/client.js';
import { useMay } from '../../app/session.js';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { type Column, DataTable } from '../../ui/data-table.js';
import { Section } from '../../ui/section.js';
import { StatusMark } from '../../ui/status-mark.js';
import { Amount } from '../../ui/values.js';
import type { LotTrace } from './api/trace-lot.js';
import css from './balance-section.module.css';

type Mass = Shape<'MassBalanceDto'>;

interface Row {
  readonly id: string;
  readonly mass: Mass;
  /** None: all deliveries together. */
  readonly layer: Shape<'TracedLayerDto'> | undefined;
}

const PARTS = ['onHand', 'used', 'wasted', 'returned'] as const;

/** Every delivery line, and that nothing of it is lost. */
export function BalanceSection({ trace }: { readonly trace: LotTrace }) {
  const t = useText();
  const words = t.trace.balance;
  const { unit } = trace.lot.consumable;
  const layers = trace.lot.layers.map((layer) => ({ id: layer.layerId, mass: layer.mass, layer }));
  const all = { id: 'all', mass: trace.mass, layer: undefined };
  const amount = (id: keyof Mass & string, head: string, of: (mass: Mass) => string) => ({
    ...{ id, head, align: 'end' as const },
    cell: ({ mass }: Row) => <Amount value={of(mass)} unit={unit} />,
  });
  const columns: Column<Row>[] = [
    { id: 'delivery', head: words.delivery, cell: (row) => <Delivery row={row} /> },
    amount('received', words.received, (mass) => mass.received),
    ...PARTS.map((part) => amount(part, words[part], (mass) => mass[part])),
    amount('countDifference', words.counted, (mass) => mass.countDifference),
    {
      ...{ id: 'balance', head: words.balance },
      cell: ({ mass }) => (
        <StatusMark tone={mass.balanced ? 'good' : 'danger'}>
          {mass.balanced ? words.balanced : words.broken}
        </StatusMark>
      ),
    },
  ];
  return (
    <Section title={words.title} hint={words.hint}>
      <DataTable
        label={words.title}
        columns={columns}
        rows={layers.length > 1 ? [...layers, all] : layers}
        rowKey={(row) => row.id}
      />
    </Section>
  );
}

function Delivery({ row: { layer } }: { readonly row: Row }) {
  const t = useText();
  const may = useMay();
  const format = useFormat();
  const words = t.trace.balance;
  if (!layer) return <strong>{words.all}</strong>;
  const name = [format.day(layer.receivedOn), layer.reference].filter(Boolean).join(', ');
  return (
    <>
      {may('deliveries.read') ? (
        <Link to="/shelves/deliveries/$deliveryId" params={{ deliveryId: layer.id }}>
          {name}
        </Link>
      ) : (
        name
      )}
      <p className={css.quiet}>{words.line(layer.supplier.name, layer.lineNumber)}</p>
      <p className={css.quiet}>{layer.presentationName}</p>
      {layer.reversed && <StatusMark tone="quiet">{words.reversed}</StatusMark>}
    </>
  );
}
