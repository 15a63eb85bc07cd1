import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import type { Proposal } from './api/list-proposals.js';
import { nameOf } from './names.js';
import css from './use-strip.module.css';

const WIDE = 1000;

/**
 * What will be used until the next order can be here, as a range, against what is there and on its
 * way; the words below say the same.
 */
export function UseStrip({ line }: { readonly line: Proposal }) {
  const t = useText();
  const words = t.ordering.strip;
  const format = useFormat();
  const at = (level: string) => line.use.find((each) => each.level === level)?.quantity ?? '0';
  if (line.use.length === 0 || line.reorderPoint === null) return null;
  const [low, lower, middle, upper, high] = ['0.05', '0.25', '0.5', '0.75', '0.95'].map(at);
  const position = Number(line.position);
  const point = Number(line.reorderPoint);
  const end = Math.max(Number(high), point, position, 1e-6) * 1.04;
  const x = (value: string | number | undefined) =>
    ((Math.max(Number(value ?? 0), 0) / end) * WIDE).toFixed(1);
  const { unit } = line.consumable;
  const told = (value: string | undefined) => format.amount(value ?? '0', unit);
  const range = words.words(told(low), told(middle), told(high));
  return (
    <div className={css.whole}>
      <svg
        role="img"
        aria-label={`${words.label(nameOf(line.consumable))}. ${range}`}
        className={css.strip}
        viewBox={`0 0 ${WIDE} 30`}
        preserveAspectRatio="none"
      >
        <path className={css.line} d={`M0 15H${WIDE}`} />
        <path className={css.outer} d={`M${x(low)} 8H${x(high)}V22H${x(low)}Z`} />
        <path className={css.inner} d={`M${x(lower)} 8H${x(upper)}V22H${x(lower)}Z`} />
        <path className={css.middle} d={`M${x(middle)} 6V24`} />
        <path className={css.point} d={`M${x(point)} 1V29`} />
        <path className={css.position} d={`M${x(position)} 2V28`} />
      </svg>
      <p className={css.words}>{range}</p>
      <p className={css.key}>
        <span>
          <svg viewBox="0 0 28 12" aria-hidden="true">
            <path className={css.outer} d="M1 2H27V10H1Z" />
            <path className={css.inner} d="M8 2H20V10H8Z" />
          </svg>
          {words.use}
        </span>
        <span>
          <svg viewBox="0 0 28 12" aria-hidden="true">
            <path className={css.position} d="M14 0V12" />
          </svg>
          {words.position} {told(line.position)}
        </span>
        <span>
          <svg viewBox="0 0 28 12" aria-hidden="true">
            <path className={css.point} d="M14 0V12" />
          </svg>
          {words.point} {told(line.reorderPoint)}
        </span>
      </p>
    </div>
  );
}
