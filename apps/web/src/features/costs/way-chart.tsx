import { useFormat } from '../../app/use-format.js';
import { type Axis, axisBetween, largestOf } from '../../ui/chart/axis.js';
import chart from '../../ui/chart/chart.module.css';
import { STRIP, StripRow, stripX } from '../../ui/chart/strips.js';
import { micro } from '../../ui/drawn.js';
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

interface Span {
  readonly from: bigint;
  readonly to: bigint;
}

interface Props {
  readonly label: string;
  readonly steps: readonly Step[];
}

/** The way from one sum to another, step by step; the figures stand beside the bars. */
export function WayChart({ label, steps }: Props) {
  const format = useFormat();
  const signed = useSigned();
  const spans = spansOf(steps);
  const ends = spans.flatMap(({ from, to }) => [from, to]);
  const lowest = ends.reduce((a, b) => (b < a ? b : a), 0n);
  const axis = axisBetween(lowest, largestOf(ends));
  return (
    <div className={css.way} role="img" aria-label={label}>
      {steps.map((step, at) => (
        <StripRow
          key={step.name}
          name={step.name}
          end={step.kind === 'sum' ? format.money(step.value) : signed(step.value)}
          strong={step.kind === 'sum'}
          axis={axis}
          marks={false}
        >
          <path className={chart.grid} d={`M${stripX(axis, 0n)} 0V${STRIP.high}`} />
          <Bar step={step} span={spans[at]} axis={axis} />
          {at > 0 && <Join at={startOf(step, spans[at])} axis={axis} path="0V6" />}
          {at + 1 < steps.length && <Join at={spans[at]?.to} axis={axis} path="24V30" />}
        </StripRow>
      ))}
    </div>
  );
}

interface BarProps {
  readonly step: Step;
  readonly span: Span | undefined;
  readonly axis: Axis;
}

function Bar({ step, span = NOWHERE, axis }: BarProps) {
  const ends = [span.from, span.to].map((value) => stripX(axis, value));
  const [left, right] = [Math.min(...ends), Math.max(...ends)];
  return (
    <path
      className={css.span}
      data-kind={step.kind}
      data-sense={step.sense}
      d={`M${left} 6H${Math.max(right, left + 2)}V24H${left}Z`}
    />
  );
}

interface JoinProps {
  readonly at: bigint | undefined;
  readonly axis: Axis;
  readonly path: string;
}

/** The dashed line on which one bar hands over to the next. */
function Join({ at = 0n, axis, path }: JoinProps) {
  return <path className={css.join} d={`M${stripX(axis, at)} ${path}`} />;
}

const NOWHERE: Span = { from: 0n, to: 0n };

/** Where a bar takes over: a sum at its end, because it begins at zero. */
function startOf({ kind }: Step, { from, to }: Span = NOWHERE): bigint {
  return kind === 'sum' ? to : from;
}

/** Where each bar begins and ends. */
function spansOf(steps: readonly Step[]): Span[] {
  let at = 0n;
  return steps.map(({ kind, value }) => {
    const from = kind === 'sum' ? 0n : at;
    at = from + micro(value);
    return { from, to: at };
  });
}
