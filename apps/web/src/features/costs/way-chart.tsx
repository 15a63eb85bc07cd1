import { useFormat } from '../../app/use-format.js';
import { micro } from '../../ui/drawn.js';
import { axisBetween, placeOn } from './axis.js';
import { useSigned } from './signed-money.js';
import css from './way-chart.module.css';

export interface Step {
  readonly name: string;
  /** A sum stands on zero; a step goes on from where the one before it ended. */
  readonly kind: 'sum' | 'step';
  readonly value: string;
  /** Whether more of it is good or bad for the practice: only how it is drawn. */
  readonly sense?: 'good' | 'bad' | undefined;
}

interface Props {
  readonly label: string;
  readonly steps: readonly Step[];
}

const WIDE = 1000;

/** The way from one sum to another, step by step; the figures stand beside the bars. */
export function WayChart({ label, steps }: Props) {
  const format = useFormat();
  const signed = useSigned();
  const spans = spansOf(steps);
  const ends = spans.flatMap(({ from, to }) => [from, to]);
  const lowest = ends.reduce((a, b) => (b < a ? b : a), 0n);
  const highest = ends.reduce((a, b) => (b > a ? b : a), 0n);
  const axis = axisBetween(lowest, highest);
  const x = (value: bigint) => placeOn(axis, value) * WIDE;
  return (
    <div className={css.chart} role="img" aria-label={label}>
      {steps.map((step, at) => {
        const { from, to } = spans[at] ?? { from: 0n, to: 0n };
        const [left, right] = [from, to].map(x).sort((a, b) => a - b) as [number, number];
        const next = at + 1 < steps.length;
        return (
          <div key={step.name} className={css.row} data-kind={step.kind}>
            <span className={css.name}>{step.name}</span>
            <svg
              aria-hidden="true"
              className={css.bar}
              viewBox={`0 0 ${WIDE} 34`}
              preserveAspectRatio="none"
            >
              <path className={css.zero} d={`M${x(0n)} 0V34`} />
              <path
                className={css.span}
                data-kind={step.kind}
                data-sense={step.sense}
                d={`M${left} 7H${Math.max(right, left + 2)}V27H${left}Z`}
              />
              {next && <path className={css.join} d={`M${x(to)} 27V34`} />}
              {at > 0 && (
                <path
                  className={css.join}
                  d={`M${x(from === 0n && step.kind === 'sum' ? to : from)} 0V7`}
                />
              )}
            </svg>
            <span className={css.value}>
              {step.kind === 'sum' ? format.money(step.value) : signed(step.value)}
            </span>
          </div>
        );
      })}
    </div>
  );
}

/** Where each bar begins and ends. */
function spansOf(steps: readonly Step[]): { from: bigint; to: bigint }[] {
  let at = 0n;
  return steps.map(({ kind, value }) => {
    const from = kind === 'sum' ? 0n : at;
    at = from + micro(value);
    return { from, to: at };
  });
}
