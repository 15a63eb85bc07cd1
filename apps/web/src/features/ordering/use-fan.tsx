import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { DataTable } from '../../ui/data-table.js';
import { Section } from '../../ui/section.js';
import type { ItemForecast } from './api/planned-items.js';
import { marksTo } from './axis.js';
import css from './chart.module.css';
import { Scale } from './scale.js';
import { TableLink } from './table-link.js';

const [WIDE, HIGH] = [1000, 220];

type Horizon = ItemForecast['horizons'][number];

const quantile = ({ quantiles }: Horizon, level: string): string =>
  quantiles.find((each) => each.level === level)?.quantity ?? '0';

interface Props {
  readonly forecast: ItemForecast;
  /** There and on the way, in stock units. */
  readonly position: string;
  readonly asTable: boolean;
}

/** The range of all use from today on, against what is there. */
export function UseFan({ forecast, position, asTable }: Props) {
  const w = useText().orderingItem.fan;
  const format = useFormat();
  const { horizons, consumable } = forecast;
  const { unit } = consumable;
  const last = horizons.at(-1)?.days ?? 1;
  const highest = Math.max(...horizons.map((each) => Number(quantile(each, '0.95'))));
  const marks = marksTo(Math.max(highest, 1e-6));
  const end = marks.at(-1) ?? 1;
  const y = (value: number) => (HIGH - (Math.min(value, end) / end) * HIGH).toFixed(1);
  const along = (level: string) => [
    `0 ${HIGH}`,
    ...horizons.map(
      (each) => `${((each.days / last) * WIDE).toFixed(1)} ${y(Number(quantile(each, level)))}`,
    ),
  ];
  const band = (low: string, high: string) =>
    `M${[...along(high), ...along(low).reverse()].join('L')}Z`;
  const there = Number(position);
  return (
    <Section title={w.title} hint={w.hint} aside={<TableLink of="fan" asTable={asTable} />}>
      <div className={css.chart} role="img" aria-label={w.picture(last)}>
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
          <path className={css.outer} d={band('0.05', '0.95')} />
          <path className={css.inner} d={band('0.25', '0.75')} />
          <path className={css.line} d={`M${along('0.5').join('L')}`} />
          {there >= 0 && there <= end && (
            <path className={css.level} d={`M0 ${y(there)}H${WIDE}`} />
          )}
        </svg>
        <div className={css.foot}>
          {horizons
            .filter(({ days }) => days % 30 === 0)
            .map(({ days }) => (
              <span
                key={days}
                style={{ left: `${(days / last) * 100}%` }}
                data-edge={days === last ? 'last' : undefined}
              >
                {format.quantity(String(days), 'days')}
              </span>
            ))}
        </div>
      </div>
      <FanKey position={format.amount(position, unit)} />
      {asTable && <FanTable forecast={forecast} />}
    </Section>
  );
}

function FanKey({ position }: { readonly position: string }) {
  const w = useText().orderingItem.fan;
  const marks = [
    [css.outer, 'M1 1H27V11H1Z', w.band],
    [css.inner, 'M1 1H27V11H1Z', w.inner],
    [css.line, 'M0 6H28', w.middle],
    [css.level, 'M0 6H28', `${w.position}: ${position}`],
  ] as const;
  return (
    <p className={css.key}>
      {marks.map(([look, path, words]) => (
        <span key={words}>
          <svg viewBox="0 0 28 12" aria-hidden="true">
            <path className={look} d={path} />
          </svg>
          {words}
        </span>
      ))}
    </p>
  );
}

function FanTable({ forecast }: { readonly forecast: ItemForecast }) {
  const w = useText().orderingItem.fan;
  const format = useFormat();
  const { unit } = forecast.consumable;
  const column = (id: string, head: string, level: string) => ({
    ...{ id, head, align: 'end' as const },
    cell: (each: Horizon) => format.amount(quantile(each, level), unit),
  });
  return (
    <DataTable
      label={w.title}
      rows={forecast.horizons}
      rowKey={(each) => String(each.days)}
      columns={[
        { id: 'days', head: w.days, cell: (each) => format.number(String(each.days)) },
        column('low', w.low, '0.05'),
        column('lower', w.lower, '0.25'),
        column('mid', w.mid, '0.5'),
        column('upper', w.upper, '0.75'),
        column('high', w.high, '0.95'),
      ]}
    />
  );
}
