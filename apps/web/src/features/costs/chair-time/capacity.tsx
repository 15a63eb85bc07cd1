import { useText } from '../../../text/text-provider.js';
import { drawnShare, micro } from '../../../ui/drawn.js';
import { Section } from '../../../ui/section.js';
import { Money } from '../../../ui/values.js';
import type { ChairTimeReport } from '../api/report-chair-time.js';
import css from './capacity.module.css';
import { useDuration } from './duration.js';

interface Props {
  readonly title: string;
  readonly capacity: ChairTimeReport['capacity'];
}

/** What chairs or people supply: what was used of it and, apart, what nobody used. */
export function Capacity({ title, capacity }: Props) {
  const t = useText();
  const duration = useDuration();
  const words = t.costReports.chairTime;
  const over = capacity.idleMinutes < 0;
  const used = drawnShare(micro(capacity.usedCost), micro(capacity.cost));
  const share = Math.min(Math.max(used, 0), 1);
  return (
    <Section title={title} hint={over ? words.overHint : words.idleHint}>
      <div className={css.bar} aria-hidden="true">
        <span className={css.used} style={{ width: `${share * 100}%` }} />
        <span className={css.idle} />
      </div>
      <dl className={css.parts}>
        <Part name={words.used} minutes={duration(capacity.usedMinutes)} cost={capacity.usedCost} />
        <Part
          name={over ? words.over : words.idle}
          minutes={duration(Math.abs(capacity.idleMinutes))}
          cost={capacity.idleCost}
        />
        <Part name={words.supplied} minutes={duration(capacity.minutes)} cost={capacity.cost} />
      </dl>
    </Section>
  );
}

interface PartProps {
  readonly name: string;
  readonly minutes: string;
  readonly cost: string;
}

function Part({ name, minutes, cost }: PartProps) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>
        {minutes}{' '}
        <small>
          <Money value={cost} />
        </small>
      </dd>
    </div>
  );
}
