import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { drawnShare, micro } from '../../ui/drawn.js';
import css from './split-bar.module.css';

interface Props {
  readonly own: string;
  readonly shared: string;
}

/** Own beside shared cost, as parts of one bar. */
export function SplitBar({ own, shared }: Props) {
  const t = useText();
  const format = useFormat();
  const whole = micro(own) + micro(shared);
  const share = drawnShare(micro(own), whole);
  const words = t.costs.split;
  return (
    <div className={css.split}>
      <div className={css.bar} aria-hidden="true">
        <span className={css.own} style={{ width: `${share * 100}%` }} />
        <span className={css.shared} />
      </div>
      <dl className={css.parts}>
        <div>
          <dt>{words.own}</dt>
          <dd>
            {format.money(own)} <small>{format.percent(String(share))}</small>
          </dd>
        </div>
        <div>
          <dt>{words.shared}</dt>
          <dd>
            {format.money(shared)}{' '}
            <small>{format.percent(String(drawnShare(micro(shared), whole)))}</small>
          </dd>
        </div>
      </dl>
    </div>
  );
}
