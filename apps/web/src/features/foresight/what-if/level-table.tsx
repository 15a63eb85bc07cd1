import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { type Column, DataTable } from '../../../ui/data-table.js';
import { StatusMark } from '../../../ui/status-mark.js';
import { Amount, Money } from '../../../ui/values.js';
import type { ServiceCurve, ServicePoint } from '../api/what-if.js';

interface Row {
  readonly key: string;
  readonly point: ServicePoint;
  readonly now: boolean;
}

interface Props {
  readonly curve: ServiceCurve;
  readonly stale: boolean;
}

/** The levels in figures; what is in force is marked, or stands first when it is no level of these. */
export function LevelTable({ curve, stale }: Props) {
  const t = useText();
  const words = t.foresight.whatIf.table;
  const { points, now, consumable } = curve;
  const isNow = (point: ServicePoint) => now !== null && same(point, now);
  const rows: Row[] = points.map((point) => ({
    ...{ key: point.level ?? '', point, now: isNow(point) },
  }));
  if (now !== null && !points.some(isNow)) rows.unshift({ key: 'now', point: now, now: true });
  const columns = useLevelColumns(curve);
  const ofItem = useItemColumns(consumable?.unit ?? '');
  return (
    <DataTable<Row>
      label={words.label}
      rows={rows}
      rowKey={(row) => row.key}
      marked={rows.find((row) => row.now)?.key}
      stale={stale}
      columns={consumable === null ? columns : [...columns, ...ofItem]}
    />
  );
}

function same(a: ServicePoint, b: ServicePoint): boolean {
  return a.level === b.level && a.stockValue === b.stockValue && a.stockOuts === b.stockOuts;
}

function useLevelColumns({ measure, now }: ServiceCurve): Column<Row>[] {
  const t = useText();
  const format = useFormat();
  const words = t.foresight.whatIf.table;
  const level = ({ point, now: here }: Row) => {
    const text =
      here && (now?.level === null || point.level === null)
        ? words.asSet
        : format.percent(point.level ?? '0');
    return here ? (
      <>
        {text} <StatusMark tone="accent">{words.now}</StatusMark>
      </>
    ) : (
      text
    );
  };
  return [
    { id: 'level', head: t.foresight.whatIf.measures[measure] ?? measure, cell: level },
    {
      ...{ id: 'stock', head: words.stock, align: 'end' },
      cell: ({ point }) => <Money value={point.stockValue} />,
    },
    {
      ...{ id: 'waste', head: words.waste, align: 'end' },
      cell: ({ point }) => <Money value={point.wastedValue} />,
    },
    {
      ...{ id: 'outs', head: words.outs, align: 'end' },
      cell: ({ point }) => format.number(point.stockOuts),
    },
  ];
}

function useItemColumns(unit: string): Column<Row>[] {
  const t = useText();
  const format = useFormat();
  const words = t.foresight.whatIf.table;
  const amount = (value: string | undefined) => <Amount value={value ?? '0'} unit={unit} rough />;
  const end = { align: 'end' } as const;
  return [
    {
      ...{ id: 'reorder', head: words.reorderPoint, ...end },
      cell: ({ point }) => amount(point.item?.reorderPoint),
    },
    {
      ...{ id: 'average', head: words.averageStock, wideOnly: true, ...end },
      cell: ({ point }) => amount(point.item?.averageStock),
    },
    {
      ...{ id: 'fill', head: words.fillRate, wideOnly: true, ...end },
      cell: ({ point }) => format.percent(point.item?.fillRate ?? '0'),
    },
  ];
}
