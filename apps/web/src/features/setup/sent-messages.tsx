import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { type Column, DataTable } from '../../ui/data-table.js';
import { Loaded } from '../../ui/loaded.js';
import { Section } from '../../ui/section.js';
import { StatusMark } from '../../ui/status-mark.js';
import { Moment } from '../../ui/values.js';
import { type Notice, noticesQuery } from './api/list-notices.js';
import css from './parts.module.css';

const route = getRouteApi('/in/setup/messages');

/** What went out, the latest first, and how it went. */
export function SentMessages() {
  const w = useText().setupMessages;
  const { cursor } = route.useSearch();
  const navigate = route.useNavigate();
  const list = useQuery(noticesQuery(cursor));
  const columns = useColumns();
  return (
    <Section title={w.sent}>
      <Loaded query={list}>
        {(page) => (
          <DataTable
            label={w.sent}
            columns={columns}
            rows={page.items}
            rowKey={(row) => row.id}
            stale={list.isPlaceholderData}
            cursor={cursor}
            nextCursor={page.nextCursor}
            onCursor={(next) => void navigate({ search: { cursor: next } })}
            empty={<p className={css.quiet}>{w.nothingSent}</p>}
          />
        )}
      </Loaded>
    </Section>
  );
}

const TONES = { waiting: 'caution', sent: 'good', 'given up': 'danger' } as const;

function useColumns(): Column<Notice>[] {
  const w = useText().setupMessages;
  const format = useFormat();
  return [
    { id: 'made', head: w.columns.made, cell: (row) => <Moment value={row.madeAt} /> },
    { id: 'way', head: w.columns.way, cell: (row) => w.channels[row.channel] },
    { id: 'to', head: w.columns.to, cell: (row) => row.recipients.join(', ') },
    {
      ...{ id: 'alerts', head: w.columns.alerts, align: 'end' },
      cell: (row) => format.number(String(row.alerts)),
    },
    {
      ...{ id: 'state', head: w.columns.state },
      cell: (row) => (
        <>
          <StatusMark tone={TONES[row.state]}>{w.states[row.state]}</StatusMark>
          {row.lastError !== null && <span className={css.attributes}>{row.lastError}</span>}
        </>
      ),
    },
  ];
}
