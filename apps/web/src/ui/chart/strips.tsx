import type { ReactNode } from 'react';
import { useFormat } from '../../app/use-format.js';
import { type Axis, markText, placeOn } from './axis.js';
import css from './chart.module.css';

/** What is drawn in a strip stands in a field of this size, the axis from left to right. */
export const STRIP = { wide: 1000, high: 30 } as const;

/** How far to the right a value stands, for a path. */
export function stripX(axis: Axis, value: bigint): number {
  return placeOn(axis, value) * STRIP.wide;
}

interface FieldProps {
  /** Given where the strip says something of its own. */
  readonly label?: string;
  readonly children: ReactNode;
}

/** The field of one strip. */
export function Strip({ label, children }: FieldProps) {
  const field = {
    ...{ className: css.strip, viewBox: `0 0 ${STRIP.wide} ${STRIP.high}` },
    preserveAspectRatio: 'none',
  };
  return label === undefined ? (
    <svg aria-hidden="true" {...field}>
      {children}
    </svg>
  ) : (
    <svg role="img" aria-label={label} {...field}>
      {children}
    </svg>
  );
}

interface RowProps {
  readonly name: ReactNode;
  /** What stands behind the strip: a figure, or a sentence. */
  readonly end: ReactNode;
  readonly words?: boolean;
  readonly strong?: boolean;
  readonly axis: Axis;
  /** Whether the marks of the axis go through it. */
  readonly marks?: boolean;
  readonly children: ReactNode;
}

/** A name, its strip, and its figure; on a narrow screen the strip stands below the two. */
export function StripRow(props: RowProps) {
  const { name, end, words = false, strong = false, axis, marks = true, children } = props;
  return (
    <div className={css.row} data-words={words || undefined} data-strong={strong || undefined}>
      <span className={css.name}>{name}</span>
      <Strip>
        {marks && <StripMarks axis={axis} />}
        {children}
      </Strip>
      <span className={css.end}>{end}</span>
    </div>
  );
}

function StripMarks({ axis }: { readonly axis: Axis }) {
  return axis.marks.map((mark) => (
    <path
      key={String(mark)}
      className={mark === 0n && axis.start < 0n ? css.zero : css.grid}
      d={`M${stripX(axis, mark)} 0V${STRIP.high}`}
    />
  ));
}

interface AxisProps {
  readonly axis: Axis;
  readonly unit: string;
  readonly words?: boolean;
}

/** The numbers below the strips, and what they are measured in. */
export function StripAxis({ axis, unit, words = false }: AxisProps) {
  const format = useFormat();
  return (
    <div className={css.row} data-words={words || undefined} data-axis aria-hidden="true">
      <div className={css.axis}>
        {axis.marks.map((mark) => (
          <span key={String(mark)} style={{ left: `${placeOn(axis, mark) * 100}%` }}>
            {format.number(markText(mark))}
          </span>
        ))}
      </div>
      <span className={css.unit}>{unit}</span>
    </div>
  );
}
