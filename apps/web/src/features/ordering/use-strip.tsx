import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { bareAxis, largestOf } from '../../ui/chart/axis.js';
import css from '../../ui/chart/chart.module.css';
import { ChartKey, KEY } from '../../ui/chart/chart-key.js';
import { STRIP, Strip, stripX } from '../../ui/chart/strips.js';
import { micro } from '../../ui/drawn.js';
import type { Proposal } from './api/list-proposals.js';
import { nameOf } from './names.js';
import parts from './parts.module.css';

interface Props {
  readonly line: Proposal;
  /** Left out where many strips share one. */
  readonly withKey?: boolean;
}

/**
 * What will be used until the next order can be here, as a range, against what is there and on its
 * way; the words below say the same.
 */
export function UseStrip({ line, withKey = true }: Props) {
  const words = useText().ordering.strip;
  const format = useFormat();
  const at = (level: string) => line.use.find((each) => each.level === level)?.quantity ?? '0';
  if (line.use.length === 0 || line.reorderPoint === null) return null;
  const [low, lower, middle, upper, high] = ['0.05', '0.25', '0.5', '0.75', '0.95'].map(at);
  const { position, reorderPoint } = line;
  const axis = bareAxis([high ?? '0', position, reorderPoint].map(micro));
  const x = (value = '0') => stripX(axis, largestOf([micro(value)])).toFixed(1);
  const told = (value = '0') => format.amount(value, line.consumable.unit);
  const range = words.words(told(low), told(middle), told(high));
  return (
    <div className={parts.strip}>
      <Strip label={`${words.label(nameOf(line.consumable))}. ${range}`}>
        <path className={css.grid} d={`M0 15H${STRIP.wide}`} />
        <path className={css.outer} d={`M${x(low)} 8H${x(high)}V22H${x(low)}Z`} />
        <path className={css.inner} d={`M${x(lower)} 8H${x(upper)}V22H${x(lower)}Z`} />
        <path className={css.middle} d={`M${x(middle)} 7V23`} />
        <path className={css.dashed} d={`M${x(reorderPoint)} 1V29`} />
        <path className={css.position} d={`M${x(position)} 2V28`} />
      </Strip>
      <p>{range}</p>
      {withKey && <StripKey position={told(position)} point={told(reorderPoint)} />}
    </div>
  );
}

interface KeyProps {
  /** Already formatted, where the key stands with one strip. */
  readonly position?: string;
  readonly point?: string;
}

/** What the marks of a strip mean. */
export function StripKey({ position = '', point = '' }: KeyProps) {
  const words = useText().ordering.strip;
  return (
    <ChartKey
      entries={[
        {
          words: words.use,
          shapes: [
            { look: css.outer, path: KEY.box },
            { look: css.inner, path: 'M8 1H20V11H8Z' },
          ],
        },
        {
          words: `${words.position} ${position}`.trim(),
          shapes: [{ look: css.position, path: KEY.tick }],
        },
        {
          words: `${words.point} ${point}`.trim(),
          shapes: [{ look: css.dashed, path: KEY.tick }],
        },
      ]}
    />
  );
}
