import css from './status-mark.module.css';

export type Tone = 'good' | 'caution' | 'danger' | 'quiet' | 'accent';

/** Drawn differently for each tone, so that nobody has to tell colours apart. */
const SHAPES: Readonly<Record<Tone, string>> = {
  good: 'M2.5 6.5l2.5 2.5 4.5-6',
  caution: 'M6 1.5l5 9H1z',
  danger: 'M2 2l8 8M10 2l-8 8',
  quiet: 'M2 6h8',
  accent: 'M6 2a4 4 0 1 0 .01 0z',
};

/** A state in one or two words with a mark of its own. */
export function StatusMark({ tone, children }: { readonly tone: Tone; readonly children: string }) {
  return (
    <span className={css.mark} data-tone={tone}>
      <svg viewBox="0 0 12 12" aria-hidden="true">
        <path d={SHAPES[tone]} />
      </svg>
      {children}
    </span>
  );
}
