import { getRouteApi, Link } from '@tanstack/react-router';
import { useMay } from '../../app/session.js';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { type Column, DataTable } from '../../ui/data-table.js';
import { FilterSelect } from '../../ui/filters.js';
import { Section } from '../../ui/section.js';
import { StatusMark } from '../../ui/status-mark.js';
import { Amount, Day } from '../../ui/values.js';
import type { LotTrace } from './api/trace-lot.js';
import { SURENESS, SurenessMark } from './marks.js';
import { teethOf, type UseRow, useRows } from './uses.js';
import css from './visits-section.module.css';

const route = getRouteApi('/in/trace');

interface Props {
  readonly trace: LotTrace;
  readonly stale: boolean;
}

/** Every visit that used it, with the teeth, and how sure that is. */
export function VisitsSection({ trace, stale }: Props) {
  const t = useText();
  const format = useFormat();
  const { cursor, rows } = route.useSearch();
  const navigate = route.useNavigate();
  const columns = useColumns(trace.lot.consumable.unit);
  const words = t.trace.visits;
  const { items, nextCursor } = trace.visits;
  const count = (n: number) => format.number(String(n));
  const counted = items.filter((visit) => !visit.reversed).length;
  const all = cursor === undefined && nextCursor === null;
  const shown = words.shown(count(counted), count(trace.affected.visits));
  return (
    <Section title={words.title} hint={all ? words.shownAll : shown}>
      <SurenessKey trace={trace} />
      <DataTable
        label={words.title}
        columns={columns}
        rows={useRows(items)}
        rowKey={(row) => row.id}
        cursor={cursor}
        nextCursor={nextCursor}
        onCursor={(next) =>
          void navigate({ search: (old) => ({ ...old, cursor: next }), resetScroll: false })
        }
        stale={stale}
        empty={<p className={css.none}>{words.empty}</p>}
      />
      {(nextCursor !== null || rows !== undefined) && (
        <div className={`${css.rows ?? ''} tb-screen-only`}>
          <FilterSelect
            label={words.rows}
            value={rows}
            all="50"
            choices={[
              { value: '200', label: '200' },
              { value: '500', label: '500' },
            ]}
            onChoose={(wanted) =>
              void navigate({
                search: (old) => ({ ...old, rows: wanted, cursor: undefined }),
                replace: true,
                resetScroll: false,
              })
            }
          />
        </div>
      )}
    </Section>
  );
}

/** What the words in the last column mean, with how much of the lot each stands for. */
function SurenessKey({ trace }: { readonly trace: LotTrace }) {
  const t = useText();
  const { unit } = trace.lot.consumable;
  const totals = new Map(trace.affected.bySureness.map((one) => [one.sureness, one.quantity]));
  return (
    <dl className={css.key}>
      {SURENESS.filter((one) => totals.has(one)).map((sureness) => (
        <div key={sureness}>
          <dt>
            <SurenessMark sureness={sureness} />
          </dt>
          <dd className={css.quantity}>
            <Amount value={totals.get(sureness) ?? '0'} unit={unit} />
          </dd>
          <dd>{t.trace.surenessWords[sureness]}</dd>
        </div>
      ))}
    </dl>
  );
}

function useColumns(unit: string): Column<UseRow>[] {
  const t = useText();
  const may = useMay();
  const format = useFormat();
  const words = t.trace.visits;
  return [
    {
      ...{ id: 'date', head: words.date },
      cell: ({ visit }) =>
        may('visits.read') ? (
          <Link
            to="/visits/$visitId"
            params={{ visitId: visit.visitId }}
            aria-label={words.openVisit(format.day(visit.visitedOn))}
          >
            <Day value={visit.visitedOn} />
          </Link>
        ) : (
          <Day value={visit.visitedOn} />
        ),
    },
    {
      ...{ id: 'chart', head: words.chart },
      cell: ({ visit }) => (
        <Link
          to="/trace"
          search={{ chart: visit.chartReference }}
          aria-label={words.traceChart(visit.chartReference)}
        >
          {visit.chartReference}
        </Link>
      ),
    },
    { id: 'teeth', head: words.teeth, cell: (row) => <Teeth row={row} /> },
    { id: 'dentist', head: words.dentist, cell: ({ visit }) => visit.dentist.name },
    {
      ...{ id: 'quantity', head: words.quantity, align: 'end' },
      cell: ({ use }) => (use ? <Amount value={use.quantity} unit={unit} /> : null),
    },
    { id: 'sure', head: words.sure, cell: (row) => <Sure row={row} /> },
  ];
}

function Teeth({ row: { visit, use } }: { readonly row: UseRow }) {
  const t = useText();
  const words = t.trace.visits;
  if (!use) return teethOf(visit.restorations);
  const notes = { restoration: undefined, tooth: words.wholeTooth, visit: words.wholeVisit };
  const note = notes[use.usedFor];
  return (
    <>
      {teethOf(use.restorations)}
      {note !== undefined && <span className={css.note}>{note}</span>}
    </>
  );
}

function Sure({ row: { visit, use } }: { readonly row: UseRow }) {
  const t = useText();
  const words = t.trace.visits;
  if (visit.reversed) return <StatusMark tone="quiet">{words.reversed}</StatusMark>;
  if (!use) return <StatusMark tone="caution">{words.notInBook}</StatusMark>;
  return <SurenessMark sureness={use.sureness} />;
}
