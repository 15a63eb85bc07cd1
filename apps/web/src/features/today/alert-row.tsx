import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { Figure, Figures } from '../../ui/figure.js';
import { Amount, Money } from '../../ui/values.js';
import css from './alert-row.module.css';
import { nameOf, sentenceOf, shownFigures } from './alert-words.js';
import type { Alert } from './api/list-alerts.js';
import { SettleLink } from './settle-link.js';

interface Props {
  readonly alert: Alert;
  readonly asOf: string;
}

export function AlertRow({ alert, asOf }: Props) {
  const t = useText();
  const format = useFormat();
  return (
    <li className={css.row}>
      <div className={css.reason}>
        <h3 className={css.name}>{nameOf(alert.consumable)}</h3>
        <p>{sentenceOf(alert, asOf, format, t)}</p>
      </div>
      <div className={css.figures}>
        <Figures>
          {shownFigures(alert, t).map((figure) => (
            <Figure key={figure.label} label={figure.label}>
              <FigureValue value={figure.value} unit={figure.unit} />
            </Figure>
          ))}
        </Figures>
      </div>
      <div className={`${css.action ?? ''} tb-screen-only`}>
        <SettleLink alert={alert} />
      </div>
    </li>
  );
}

function FigureValue({ value, unit }: { readonly value: string; readonly unit: string }) {
  const { currency, number } = useFormat();
  if (unit === currency) return <Money value={value} />;
  return unit === '' ? number(value) : <Amount value={value} unit={unit} rough />;
}
