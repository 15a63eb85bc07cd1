import { isWholeUnit } from '#lib/measure';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { axisTo, largestOf, markText, ONE } from '../../ui/chart/axis.js';
import css from '../../ui/chart/chart.module.css';
import { ChartKey, KEY } from '../../ui/chart/chart-key.js';
import { footOf, Plot, plotX, plotY } from '../../ui/chart/plot.js';
import { DataTable } from '../../ui/data-table.js';
import { EmptyState } from '../../ui/empty-state.js';
import { Section } from '../../ui/section.js';
import type { ItemForecast } from './api/planned-items.js';
import { TableLink } from './table-link.js';
import { type ShownWeek, shownWeeks } from './weeks.js';

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
  const axis = axisTo(largestOf(weeks.map((week) => week.demand + week.oneOff)), {
    most: 4,
    ...(isWholeUnit(unit) ? { finest: ONE } : {}),
  });
  const middle = (i: number) => (i + 0.5) / weeks.length;
  const wide = plotX(0.7 / weeks.length);
  const bar = (i: number, from: bigint, to: bigint) => {
    const [low, high] = [plotY(axis, from), plotY(axis, to)];
    return to === from
      ? ''
      : `M${plotX((i + 0.15) / weeks.length)} ${low}h${wide}V${high}h-${wide}Z`;
  };
  const day = (week: ShownWeek | undefined) => format.day(week?.monday ?? '2000-01-03');
  return (
    <>
      <Plot
        label={w.picture(day(weeks[0]), day(weeks.at(-1)))}
        axis={axis}
        unit={unit}
        foot={footOf(weeks, ({ monday }, i) => ({
          ...{ key: monday, at: middle(i), words: format.dayShort(monday) },
        }))}
        below={weeks.map(
          (week, i) =>
            week.shortDays > 0 && (
              <svg
                key={week.monday}
                aria-hidden="true"
                viewBox="0 0 10 9"
                style={{ left: `${middle(i) * 100}%` }}
              >
                <path className={css.wedge} d="M5 0L10 9H0Z" />
              </svg>
            ),
        )}
      >
        <path className={css.bar} d={weeks.map(({ demand }, i) => bar(i, 0n, demand)).join('')} />
        <path
          className={css.open}
          d={weeks.map(({ demand, oneOff }, i) => bar(i, demand, demand + oneOff)).join('')}
        />
      </Plot>
      <ChartKey
        entries={[
          { words: w.demand, shapes: [{ look: css.bar, path: KEY.bar }] },
          { words: w.oneOff, shapes: [{ look: css.open, path: KEY.bar }] },
          { words: w.short, shapes: [{ look: css.wedge, path: KEY.wedge }] },
        ]}
      />
    </>
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
          cell: (week) => format.amount(markText(week.demand), unit),
        },
        {
          ...{ id: 'marks', head: w.marks },
          cell: ({ oneOff, shortDays }) =>
            [
              oneOff > 0n ? `${format.amount(markText(oneOff), unit)} ${w.oneOff}` : '',
              shortDays > 0 ? `${shortDays} × ${w.short}` : '',
            ]
              .filter((part) => part !== '')
              .join(', '),
        },
      ]}
    />
  );
}
