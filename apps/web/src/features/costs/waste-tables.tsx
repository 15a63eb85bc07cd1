import { getRouteApi } from '@tanstack/react-router';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { DataTable } from '../../ui/data-table.js';
import { EmptyState } from '../../ui/empty-state.js';
import { FilterSelect, Filters } from '../../ui/filters.js';
import { Section } from '../../ui/section.js';
import { Amount, Money } from '../../ui/values.js';
import { type WasteReport, wasteByMonth } from './sums.js';

const route = getRouteApi('/in/costs/waste');

interface Props {
  readonly report: WasteReport;
}

/** Each kind of write-off with its quantity, the latest month first. */
export function ThrownAway({ report }: Props) {
  const t = useText();
  const format = useFormat();
  const { why } = route.useSearch();
  const navigate = route.useNavigate();
  const words = t.costs.waste;
  const nameOf = (reason: string) => words.reasons[reason] ?? reason;
  const reasons = [...new Set(report.writeOffs.map((row) => row.reason))].sort();
  const rows = report.writeOffs.filter((row) => why === undefined || row.reason === why);
  return (
    <Section title={words.rows}>
      <div style={{ marginTop: '1rem' }}>
        <Filters>
          <FilterSelect
            label={words.reason}
            value={why}
            choices={reasons.map((reason) => ({ value: reason, label: nameOf(reason) }))}
            onChoose={(reason) =>
              void navigate({
                search: (old) => ({ ...old, why: reason }),
                replace: true,
                resetScroll: false,
              })
            }
          />
        </Filters>
      </div>
      <DataTable
        label={words.rows}
        rows={rows}
        rowKey={(row) => [row.month, row.reason, row.category, row.unit].join(' ')}
        empty={<EmptyState title={words.emptyThrown} />}
        columns={[
          { id: 'month', head: words.month, cell: (row) => format.month(row.month) },
          { id: 'reason', head: words.reason, cell: (row) => nameOf(row.reason) },
          { id: 'category', head: words.category, cell: (row) => row.category },
          {
            ...{ id: 'quantity', head: words.quantity, align: 'end' },
            cell: (row) => <Amount value={row.quantity} unit={row.unit} />,
          },
          {
            ...{ id: 'cost', head: words.cost, align: 'end' },
            cell: (row) => <Money value={row.cost} />,
          },
        ]}
      />
    </Section>
  );
}

export function WasteMonths({ report }: Props) {
  const t = useText();
  const format = useFormat();
  const words = t.costs.waste;
  return (
    <Section title={words.byMonth}>
      <DataTable
        label={words.byMonth}
        rows={wasteByMonth(report)}
        rowKey={(row) => row.month}
        columns={[
          { id: 'month', head: words.month, cell: (row) => format.month(row.month) },
          {
            ...{ id: 'thrown', head: words.thrown, align: 'end' },
            cell: (row) => <Money value={row.thrown} />,
          },
          {
            ...{ id: 'chairside', head: words.chairside, align: 'end' },
            cell: (row) => <Money value={row.chairside} />,
          },
          {
            ...{ id: 'sum', head: words.sum, align: 'end' },
            cell: (row) => <Money value={row.sum} />,
          },
        ]}
      />
    </Section>
  );
}
