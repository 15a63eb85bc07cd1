import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { DataTable } from '../../ui/data-table.js';
import { EmptyState } from '../../ui/empty-state.js';
import { Section } from '../../ui/section.js';
import type { ItemForecast } from './api/planned-items.js';
import { marksTo } from './axis.js';
import css from './chart.module.css';
import { Scale } from './scale.js';
import { TableLink } from './table-link.js';
import { type ShownWeek, shownWeeks } from './weeks.js';

const [WIDE, HIGH] = [1000, 220];
/** At most so many weeks are named below the picture. */
const NAMED = 6;

interface Props {
  readonly forecast: ItemForecast;
  readonly leaveOutRetakes: boolean;
  readonly asTable: boolean;
}

/** What was used by week; one-offs and days without stock are marked. */
export function UseHistory({ forecast, leaveOutRetakes, asTable }: Props) {
  const w = useText().orderingItem.history;
  const { history, consumable } = forecast;
  const weeks = shownWeeks(history);
  const used = Number(history.total) > 0;
  return (
    <Section
      title={w.title}
      hint={`${w.hint} ${leaveOutRetakes ? w.retakesOut : w.retakesIn}`}
      {...(used ? { aside: <TableLink of="history" asTable={asTable} /> } : {})}
    >
      {used ? (
        <>
          <WeekChart weeks={weeks} unit={consumable.unit} />
          {asTable && <WeekTable weeks={weeks} unit={consumable.unit} />}
        </>
      ) : (
        <EmptyState title={w.none} />
      )}
    </Section>
  );
}

interface WeeksProps {
  readonly weeks: readonly ShownWeek[];
  readonly unit: string;
}

function WeekChart({ weeks, unit }: WeeksProps) {
  const w = useText().orderingItem.history;
  const format = useFormat();
  const marks = marksTo(Math.max(...weeks.map((week) => week.demand + week.oneOff)));
  const end = marks.at(-1) ?? 1;
  const slot = WIDE / weeks.length;
  const y = (value: number) => HIGH - (value / end) * HIGH;
  const bar = (i: number, from: number, to: number) => {
    const [x, wide] = [i * slot + slot * 0.15, slot * 0.7];
    const [at, width] = [x.toFixed(1), wide.toFixed(1)];
    return `M${at} ${y(from).toFixed(1)}h${width}V${y(to).toFixed(1)}h-${width}Z`;
  };
  const every = Math.ceil(weeks.length / NAMED);
  const day = (week: ShownWeek | undefined) => format.day(week?.monday ?? '2000-01-03');
  return (
    <>
      <div
        className={css.chart}
        role="img"
        aria-label={w.picture(day(weeks[0]), day(weeks.at(-1)))}
      >
        <Scale marks={marks} unit={unit} />
        <svg
          aria-hidden="true"
          className={css.picture}
          viewBox={`0 0 ${WIDE} ${HIGH}`}
          preserveAspectRatio="none"
        >
          {marks.map((mark) => (
            <path key={mark} className={css.grid} d={`M0 ${y(mark)}H${WIDE}`} />
          ))}
          <path
            className={css.bar}
            d={weeks.map((week, i) => (week.demand > 0 ? bar(i, 0, week.demand) : '')).join('')}
          />
          <path
            className={css.left}
            d={weeks
              .map((week, i) =>
                week.oneOff > 0 ? bar(i, week.demand, week.demand + week.oneOff) : '',
              )
              .join('')}
          />
        </svg>
        <div className={css.foot}>
          {weeks.map(
            (week, i) =>
              week.shortDays > 0 && (
                <svg
                  key={week.monday}
                  viewBox="0 0 10 9"
                  aria-hidden="true"
                  style={{ left: `${((i + 0.5) / weeks.length) * 100}%` }}
                >
                  <path d="M5 0L10 9H0Z" />
                </svg>
              ),
          )}
          {weeks.map(
            (week, i) =>
              (weeks.length - 1 - i) % every === 0 && (
                <span key={week.monday} style={{ left: `${((i + 0.5) / weeks.length) * 100}%` }}>
                  {format.dayShort(week.monday)}
                </span>
              ),
          )}
        </div>
      </div>
      <WeekKey />
    </>
  );
}

function WeekKey() {
  const w = useText().orderingItem.history;
  return (
    <p className={css.key}>
      <span>
        <svg viewBox="0 0 28 12" aria-hidden="true">
          <path className={css.bar} d="M8 0H20V12H8Z" />
        </svg>
        {w.demand}
      </span>
      <span>
        <svg viewBox="0 0 28 12" aria-hidden="true">
          <path className={css.left} d="M8 1H20V11H8Z" />
        </svg>
        {w.oneOff}
      </span>
      <span>
        <svg viewBox="0 0 28 12" aria-hidden="true">
          <path className={css.mark} d="M14 1L20 11H8Z" />
        </svg>
        {w.short}
      </span>
    </p>
  );
}

function WeekTable({ weeks, unit }: WeeksProps) {
  const w = useText().orderingItem.history;
  const format = useFormat();
  return (
    <DataTable
      label={w.title}
      rows={[...weeks].reverse()}
      rowKey={(week) => week.monday}
      columns={[
        { id: 'week', head: w.week, cell: (week) => format.day(week.monday) },
        {
          ...{ id: 'amount', head: w.amount, align: 'end' },
          cell: (week) => format.amount(String(Number(week.demand.toFixed(6))), unit),
        },
        {
          ...{ id: 'marks', head: w.marks },
          cell: ({ oneOff, shortDays }) =>
            [
              oneOff > 0
                ? `${format.amount(String(Number(oneOff.toFixed(6))), unit)} ${w.oneOff}`
                : '',
              shortDays > 0 ? `${shortDays} × ${w.short}` : '',
            ]
              .filter((part) => part !== '')
              .join(', '),
        },
      ]}
    />
  );
}
