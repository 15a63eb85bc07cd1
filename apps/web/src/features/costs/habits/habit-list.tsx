import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { drawnShare, micro } from '../../../ui/drawn.js';
import { Section } from '../../../ui/section.js';
import type { Habit, HabitReport } from '../api/report-habits.js';
import { HabitLink } from './habit-link.js';
import css from './habit-list.module.css';
import { costOfOne, kindOf, thingOf } from './habit-words.js';

/** The costliest first: what it is, its figures, what would change it, and the rows behind. */
export function HabitList({ report }: { readonly report: HabitReport }) {
  const t = useText();
  const words = t.costReports.habits;
  const largest = report.habits.reduce(
    (most, { cost }) => (micro(cost) > most ? micro(cost) : most),
    0n,
  );
  return (
    <Section title={words.title}>
      <ol className={css.habits} aria-label={words.title}>
        {report.habits.map((habit) => (
          <li key={habit.rank} className={css.habit}>
            <span className={css.rank} aria-hidden="true">
              {habit.rank}
            </span>
            <OneHabit habit={habit} report={report} />
            <Cost habit={habit} share={drawnShare(micro(habit.cost), largest)} />
          </li>
        ))}
      </ol>
    </Section>
  );
}

function OneHabit({ habit, report }: { readonly habit: Habit; readonly report: HabitReport }) {
  const t = useText();
  const format = useFormat();
  const words = t.costReports.habits;
  const known = kindOf(habit.kind);
  const kind = known === undefined ? undefined : words.kinds[known];
  const reason = t.costs.waste.reasons[habit.wasteReason ?? ''];
  const times = format.number(String(habit.times));
  const quantity =
    habit.kind === 'retakes'
      ? words.attempts(format.number(habit.quantity))
      : format.amount(habit.quantity, habit.unit);
  return (
    <div className={css.what}>
      <h3>
        {known === 'other' && reason !== undefined ? reason : (kind?.name ?? habit.kind)}:{' '}
        {thingOf(habit)}
      </h3>
      <p>
        {words.figures(times, quantity)}
        {habit.kind === 'more than the template' && habit.templateName !== null
          ? ` ${words.ofTemplate(habit.templateName)}`
          : ''}
        {habit.shareOfMaterial === null
          ? ''
          : ` ${words.ofMaterial(format.percent(habit.shareOfMaterial))}`}
      </p>
      {kind !== undefined && (
        <p className={css.change}>
          {kind.change} {words.each(format.money(costOfOne(habit)))}
        </p>
      )}
      <p className="tb-screen-only">
        <HabitLink habit={habit} period={report} />
      </p>
    </div>
  );
}

function Cost({ habit, share }: { readonly habit: Habit; readonly share: number }) {
  const t = useText();
  const format = useFormat();
  const words = t.costReports.habits;
  return (
    <div className={css.cost}>
      <p className={css.year}>{words.aYear(format.money(habit.savedPerYear))}</p>
      <span className={css.track} aria-hidden="true">
        <span style={{ width: `${share * 100}%` }} />
      </span>
      {habit.cost !== habit.savedPerYear && (
        <p className={css.quiet}>{words.thisPeriod(format.money(habit.cost))}</p>
      )}
    </div>
  );
}
