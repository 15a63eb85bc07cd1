import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { axisTo, largestOf } from '../../ui/chart/axis.js';
import css from '../../ui/chart/chart.module.css';
import { ChartKey, KEY } from '../../ui/chart/chart-key.js';
import { footOf, PLOT, Plot, plotX, plotY } from '../../ui/chart/plot.js';
import { DataTable } from '../../ui/data-table.js';
import { micro } from '../../ui/drawn.js';
import { Section } from '../../ui/section.js';
import type { ItemForecast } from './api/planned-items.js';
import { TableLink } from './table-link.js';

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
  const last = horizons.at(-1)?.days ?? 1;
  const axis = axisTo(largestOf(horizons.map((each) => micro(quantile(each, '0.95')))), {
    most: 4,
  });
  const along = (level: string) => [
    `0 ${PLOT.high}`,
    ...horizons.map(
      (each) => `${plotX(each.days / last)} ${plotY(axis, micro(quantile(each, level)))}`,
    ),
  ];
  const band = (low: string, high: string) =>
    `M${[...along(high), ...along(low).reverse()].join('L')}Z`;
  const there = micro(position);
  const months = horizons.filter(({ days }) => days % 30 === 0);
  return (
    <Section title={w.title} hint={w.hint} aside={<TableLink of="fan" asTable={asTable} />}>
      <Plot
        label={w.picture(last)}
        axis={axis}
        unit={consumable.unit}
        foot={footOf(months, ({ days }) => ({
          ...{ key: String(days), at: days / last },
          words: format.quantity(String(days), 'days'),
        }))}
      >
        <path className={css.outer} d={band('0.05', '0.95')} />
        <path className={css.inner} d={band('0.25', '0.75')} />
        <path className={css.line} d={`M${along('0.5').join('L')}`} />
        {there >= 0n && there <= axis.end && (
          <path className={css.dashed} d={`M0 ${plotY(axis, there)}H${PLOT.wide}`} />
        )}
      </Plot>
      <ChartKey
        entries={[
          { words: w.band, shapes: [{ look: css.outer, path: KEY.box }] },
          { words: w.inner, shapes: [{ look: css.inner, path: KEY.box }] },
          { words: w.middle, shapes: [{ look: css.line, path: KEY.line }] },
          {
            words: `${w.position}: ${format.amount(position, consumable.unit)}`,
            shapes: [{ look: css.dashed, path: KEY.line }],
          },
        ]}
      />
      {asTable && <FanTable forecast={forecast} />}
    </Section>
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
