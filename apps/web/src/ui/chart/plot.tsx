import type { ReactNode } from 'react';
import { useFormat } from '../../app/use-format.js';
import { type Axis, markText, placeOn } from './axis.js';
import css from './chart.module.css';

/** What is drawn inside a plot stands in a field of this size, the axis from bottom to top. */
export const PLOT = { wide: 1000, high: 220 } as const;

/** How far down a value stands, for a path. */
export function plotY(axis: Axis, value: bigint): string {
  return ((1 - placeOn(axis, value)) * PLOT.high).toFixed(1);
}

/** How far to the right, of a share from 0 to 1. */
export function plotX(share: number): string {
  return (share * PLOT.wide).toFixed(1);
}

/** A word below the picture, centred at a share of its width. */
export interface FootMark {
  readonly key: string;
  readonly at: number;
  readonly words: string;
  /** Stands on a narrow screen as well. */
  readonly few: boolean;
  readonly strong?: boolean;
}

/** At most so many words stand below a picture. */
const NAMED = 8;

/** Names every so manieth of a row of things, counted back from the last, which is always named. */
export function footOf<T>(
  things: readonly T[],
  of: (
    thing: T,
    i: number,
  ) => { readonly key: string; readonly at: number; readonly words: string },
): FootMark[] {
  const every = Math.ceil(things.length / NAMED);
  const back = (i: number) => things.length - 1 - i;
  return things.flatMap((thing, i) =>
    back(i) % every === 0 ? [{ ...of(thing, i), few: back(i) % (2 * every) === 0 }] : [],
  );
}

interface Props {
  /** What the picture shows, in a sentence; a table or words beside it say the same. */
  readonly label: string;
  readonly axis: Axis;
  /** What the axis is measured in; stands with its highest mark. */
  readonly unit?: string;
  readonly foot: readonly FootMark[];
  /** Marks between the picture and the words below it. */
  readonly below?: ReactNode;
  readonly small?: boolean;
  readonly children: ReactNode;
}

/** A picture over an axis that stands on its left. */
export function Plot({ label, axis, unit, foot, below, small = false, children }: Props) {
  const format = useFormat();
  const told = axis.marks.map((mark) => ({
    mark,
    words:
      unit !== undefined && mark === axis.end
        ? format.quantity(markText(mark), unit)
        : format.number(markText(mark)),
  }));
  const widest = told.reduce((most, { words }) => (words.length > most.length ? words : most), '');
  return (
    <div className={css.plot} role="img" aria-label={label} data-small={small || undefined}>
      <div className={css.scale} aria-hidden="true" data-widest={widest}>
        {told.map(({ mark, words }) => (
          <span key={words} style={{ bottom: `${placeOn(axis, mark) * 100}%` }}>
            {words}
          </span>
        ))}
      </div>
      <svg
        aria-hidden="true"
        className={css.picture}
        viewBox={`0 0 ${PLOT.wide} ${PLOT.high}`}
        preserveAspectRatio="none"
      >
        {axis.marks.map((mark) => (
          <path
            key={String(mark)}
            className={css.grid}
            d={`M0 ${plotY(axis, mark)}H${PLOT.wide}`}
          />
        ))}
        {children}
      </svg>
      <div className={css.foot} aria-hidden="true">
        {below}
        {foot.map(({ key, at, words, few, strong }) => (
          <span
            key={key}
            style={{ left: `${at * 100}%` }}
            data-few={few || undefined}
            data-strong={strong}
          >
            {words}
          </span>
        ))}
      </div>
    </div>
  );
}
