import css from './chart.module.css';

/** The shapes of the key to a picture, in a field of 28 by 12. */
export const KEY = {
  box: 'M1 1H27V11H1Z',
  bar: 'M8 0H20V12H8Z',
  line: 'M0 6H28',
  tick: 'M14 0V12',
  whisker: 'M1 6H27M1 2v8M27 2v8',
  wedge: 'M14 1L20 11H8Z',
} as const;

/** One or several shapes, each as the picture draws it, and what they mean. */
export interface KeyEntry {
  readonly words: string;
  readonly shapes: readonly {
    readonly look: string | undefined;
    readonly path: string;
    readonly side?: string;
  }[];
}

/** What is what in a picture. */
export function ChartKey({ entries }: { readonly entries: readonly KeyEntry[] }) {
  return (
    <p className={css.key}>
      {entries.map(({ words, shapes }) => (
        <span key={words}>
          <svg viewBox="0 0 28 12" aria-hidden="true">
            {shapes.map(({ look, path, side }) => (
              <path key={`${look} ${path}`} className={look} d={path} data-side={side} />
            ))}
          </svg>
          {words}
        </span>
      ))}
    </p>
  );
}
