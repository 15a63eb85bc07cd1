import { getRouteApi, Link } from '@tanstack/react-router';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { DataTable } from '../../../ui/data-table.js';
import { Section } from '../../../ui/section.js';
import { StatusMark, type Tone } from '../../../ui/status-mark.js';
import { Moment } from '../../../ui/values.js';
import type { ReplaySummary } from '../api/replays.js';

const route = getRouteApi('/in/ordering/proof');

const TONES: Readonly<Record<ReplaySummary['state'], Tone>> = {
  ...{ running: 'accent', done: 'good', failed: 'danger' },
};

/** Replays made before; the results stay as they were. */
export function ReplayHistory({ replays }: { readonly replays: readonly ReplaySummary[] }) {
  const t = useText();
  const format = useFormat();
  const { replay: chosen } = route.useSearch();
  const words = t.foresight.proof.history;
  if (replays.length < 2) return null;
  return (
    <Section title={words.title} hint={words.hint}>
      <DataTable<ReplaySummary>
        label={words.title}
        rows={replays}
        rowKey={(row) => row.id}
        marked={chosen ?? replays[0]?.id}
        columns={[
          {
            ...{ id: 'when', head: words.when },
            cell: (row) => (
              <Link
                to="/ordering/proof"
                search={(old) => ({ ...old, replay: row.id, show: undefined })}
              >
                <Moment value={row.startedAt} />
              </Link>
            ),
          },
          {
            ...{ id: 'days', head: words.days },
            cell: (row) => words.span(format.day(row.firstDay), format.day(row.lastDay)),
          },
          { id: 'by', head: words.by, cell: (row) => row.startedBy, wideOnly: true },
          {
            ...{ id: 'state', head: words.state },
            cell: (row) => (
              <StatusMark tone={TONES[row.state]}>
                {words.states[row.state] ?? row.state}
              </StatusMark>
            ),
          },
        ]}
      />
    </Section>
  );
}
