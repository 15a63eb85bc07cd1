import { Link } from '@tanstack/react-router';
import { useMay } from '../../app/session.js';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { Figure, Figures } from '../../ui/figure.js';
import { Amount, Money } from '../../ui/values.js';
import css from './alert-row.module.css';
import { sentenceOf, shownFigures, titleOf } from './alert-words.js';
import type { Alert } from './api/list-alerts.js';
import { RowActions } from './row-actions.js';

interface Props {
  readonly alert: Alert;
  readonly asOf: string;
}

export function AlertRow({ alert, asOf }: Props) {
  const t = useText();
  const format = useFormat();
  const may = useMay();
  return (
    <li className={css.row}>
      <div className={css.reason}>
        <h3 className={css.name}>{titleOf(alert, t)}</h3>
        <p>{sentenceOf(alert, asOf, format, t)}</p>
        {alert.level && may('costs.read') && (
          <p className="tb-screen-only">
            <Link to="/ordering/items/$consumableId" params={{ consumableId: alert.consumable.id }}>
              {t.today.inOrdering}
            </Link>
          </p>
        )}
        {alert.snoozed && (
          <p className={css.off}>
            {t.today.snooze.off(
              format.day(alert.snoozed.until),
              alert.snoozed.by,
              alert.snoozed.reason,
            )}
          </p>
        )}
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
        <RowActions alert={alert} asOf={asOf} />
      </div>
    </li>
  );
}

function FigureValue({ value, unit }: { readonly value: string; readonly unit: string }) {
  const { currency, number } = useFormat();
  if (unit === currency) return <Money value={value} />;
  return unit === '' ? number(value) : <Amount value={value} unit={unit} rough />;
}
