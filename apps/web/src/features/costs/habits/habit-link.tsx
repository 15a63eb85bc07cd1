import { Link } from '@tanstack/react-router';
import { useMay } from '../../../app/session.js';
import { useText } from '../../../text/text-provider.js';
import type { Habit, HabitReport } from '../api/report-habits.js';
import { thingOf } from './habit-words.js';

interface Props {
  readonly habit: Habit;
  readonly period: Pick<HabitReport, 'from' | 'to'>;
}

/** To the rows that the figures of a habit were added up from. */
export function HabitLink({ habit, period }: Props) {
  const t = useText();
  const may = useMay();
  const words = t.costReports.habits;
  const { from, to } = period;
  const name = thingOf(habit);
  if (habit.kind === 'retakes') {
    const search = { from, to, templateId: habit.templateId ?? undefined, sort: 'cost' as const };
    return (
      <Link
        to="/costs/restorations"
        search={search}
        aria-label={words.linkOf(words.toRestorations, name)}
      >
        {words.toRestorations}
      </Link>
    );
  }
  if (habit.kind === 'more than the template' && habit.templateId !== null) {
    return (
      <Link
        to="/costs/templates"
        search={{ templateId: habit.templateId }}
        aria-label={words.linkOf(words.toTemplate, name)}
      >
        {words.toTemplate}
      </Link>
    );
  }
  if (!may('stock.read')) return null;
  const consumableId = habit.consumableId ?? undefined;
  const account = habit.wasteReason === null ? ('visit' as const) : ('waste' as const);
  return (
    <Link
      to="/shelves/movements"
      search={{ from, to, consumableId, account }}
      aria-label={words.linkOf(words.toMovements, name)}
    >
      {words.toMovements}
    </Link>
  );
}
