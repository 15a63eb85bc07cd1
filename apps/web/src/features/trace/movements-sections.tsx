import { Button } from '@mantine/core';
import { getRouteApi } from '@tanstack/react-router';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { DataTable } from '../../ui/data-table.js';
import { micro } from '../../ui/drawn.js';
import { Section } from '../../ui/section.js';
import { Amount, Day } from '../../ui/values.js';
import type { LotTrace, TracedMovement } from './api/trace-lot.js';
import css from './hold-history.module.css';

const route = getRouteApi('/in/trace');

interface Props {
  readonly trace: LotTrace;
}

interface Other {
  readonly movement: TracedMovement;
  readonly what: string;
}

/** Thrown away, sent back, or otherwise at a count. */
export function OthersSection({ trace }: Props) {
  const t = useText();
  const words = t.trace.others;
  const { unit } = trace.lot.consumable;
  const as = (movements: readonly TracedMovement[], say: (one: TracedMovement) => string) =>
    movements.map((movement): Other => ({ movement, what: say(movement) }));
  const reasonOf = (reason: string | null) => words.reasons[reason ?? ''] ?? reason ?? '';
  const rows = [
    ...as(trace.waste, ({ reason }) => words.waste(reasonOf(reason))),
    ...as(trace.returns, () => words.returned),
    ...as(trace.countDifferences, ({ quantity }) =>
      micro(quantity) > 0n ? words.missing : words.found,
    ),
  ].sort((a, b) => a.movement.occurredOn.localeCompare(b.movement.occurredOn));
  return (
    <Section title={words.title}>
      <DataTable
        label={words.title}
        rows={rows}
        rowKey={({ movement }) => movement.movementId}
        empty={<p className={css.none}>{words.empty}</p>}
        columns={[
          {
            ...{ id: 'date', head: words.date },
            cell: ({ movement }) => <Day value={movement.occurredOn} />,
          },
          { id: 'what', head: words.what, cell: ({ what }) => what },
          {
            ...{ id: 'where', head: words.where },
            cell: ({ movement }) => movement.from ?? movement.to ?? '',
          },
          {
            ...{ id: 'quantity', head: words.quantity, align: 'end' },
            cell: ({ movement }) => (
              <Amount value={movement.quantity.replace('-', '')} unit={unit} />
            ),
          },
          { id: 'note', head: words.note, cell: ({ movement }) => movement.note ?? '' },
        ]}
      />
    </Section>
  );
}

const FEW = 20;

/** From shelf to shelf, and opened. A well-used lot is carried hundreds of times. */
export function MovesSection({ trace }: Props) {
  const t = useText();
  const format = useFormat();
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const words = t.trace.moves;
  const { unit } = trace.lot.consumable;
  const all = search.moves === 'all';
  const show = () =>
    void navigate({
      search: (old) => ({ ...old, moves: all ? undefined : 'all' }),
      replace: true,
      resetScroll: false,
    });
  return (
    <Section title={words.title}>
      <DataTable
        label={words.title}
        rows={all ? trace.moves : trace.moves.slice(0, FEW)}
        rowKey={(row) => row.movementId}
        empty={<p className={css.none}>{words.empty}</p>}
        columns={[
          {
            ...{ id: 'date', head: t.trace.others.date },
            cell: (row) => <Day value={row.occurredOn} />,
          },
          { id: 'from', head: words.from, cell: (row) => row.from ?? '' },
          {
            ...{ id: 'to', head: words.to },
            cell: (row) => (row.from === row.to ? words.opened : (row.to ?? '')),
          },
          {
            ...{ id: 'quantity', head: t.trace.others.quantity, align: 'end' },
            cell: (row) => <Amount value={row.quantity} unit={unit} />,
          },
        ]}
      />
      {trace.moves.length > FEW && (
        <Button variant="default" mt="md" className="tb-screen-only" onClick={show}>
          {all ? words.few : words.all(format.number(String(trace.moves.length)))}
        </Button>
      )}
    </Section>
  );
}
