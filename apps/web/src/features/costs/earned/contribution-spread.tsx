import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { axisBetween, largestOf } from '../../../ui/chart/axis.js';
import css from '../../../ui/chart/chart.module.css';
import { StripAxis, StripRow, stripX } from '../../../ui/chart/strips.js';
import { micro } from '../../../ui/drawn.js';
import { Section } from '../../../ui/section.js';
import type { ContributionRow } from '../api/report-contributions.js';

interface Props {
  readonly title: string;
  readonly rows: readonly ContributionRow[];
  readonly nameOf: (row: ContributionRow) => string;
}

interface Width {
  readonly row: ContributionRow;
  readonly p10: bigint;
  readonly p50: bigint;
  readonly p90: bigint;
}

function widthsOf(rows: readonly ContributionRow[]): Width[] {
  return rows.flatMap((row) => {
    const { p10, p50, p90 } = row;
    if (p10 === null || p50 === null || p90 === null) return [];
    return [{ row, p10: micro(p10), p50: micro(p50), p90: micro(p90) }];
  });
}

/** One strip a row: what 8 of 10 restorations leave, and the one in the middle. */
export function ContributionSpread({ title, rows, nameOf }: Props) {
  const words = useText().costReports.contributions;
  const format = useFormat();
  const widths = widthsOf(rows);
  if (widths.length === 0) return null;
  const lowest = widths.reduce((a, { p10 }) => (p10 < a ? p10 : a), 0n);
  const axis = axisBetween(lowest, largestOf(widths.map(({ p90 }) => p90)));
  const x = (value: bigint) => stripX(axis, value);
  return (
    <Section title={title} hint={words.spreadHint}>
      <div className={css.strips} role="img" aria-label={words.picture(widths.length)}>
        {widths.map(({ row, p10, p50, p90 }) => (
          <StripRow
            key={nameOf(row)}
            name={nameOf(row)}
            end={format.money(row.p50 ?? '0')}
            axis={axis}
          >
            <path
              className={css.band}
              d={`M${x(p10)} 9H${Math.max(x(p90), x(p10) + 2)}V21H${x(p10)}Z`}
            />
            <path className={css.middle} d={`M${x(p50)} 5V25`} />
          </StripRow>
        ))}
        <StripAxis axis={axis} unit={format.currency} />
      </div>
    </Section>
  );
}
