import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { Figure, Figures } from '../../ui/figure.js';
import { Money } from '../../ui/values.js';
import css from './answer.module.css';
import type { MonthOfWork, MonthQuestion } from './api/work-out-month.js';
import { Scroller } from './scroller.js';

interface Props {
  readonly month: MonthOfWork;
  readonly asked: MonthQuestion;
}

/** How many of each pay for the fixed cost, and what the month leaves. */
export function MonthResult({ month, asked }: Props) {
  const w = useText().quotes.month;
  const format = useFormat();
  const share = month.safetyShare;
  return (
    <div className={css.result}>
      {month.breakEvenRevenue === null && <p className={css.unpriced}>{w.never}</p>}
      <MonthTable month={month} asked={asked} />
      <Figures>
        <Figure label={w.income} large>
          <Money value={month.income} />
        </Figure>
        <Figure label={w.contribution}>
          <Money value={month.contribution} />
        </Figure>
        <Figure label={w.revenue}>
          <Money value={month.revenue} />
        </Figure>
        <Figure label={w.breakEvenRevenue}>
          <Money value={month.breakEvenRevenue} />
        </Figure>
        <Figure label={w.safety}>
          <Money value={month.safety} />
          {share !== null && ` (${format.percent(share)})`}
        </Figure>
        {month.chairHours !== null && (
          <Figure label={w.hoursNeeded}>{w.inHours(format.roughly(month.chairHours))}</Figure>
        )}
        {month.leverage !== null && (
          <Figure label={w.leverage}>{w.times(format.roughly(month.leverage))}</Figure>
        )}
      </Figures>
      <p className={css.what}>{w.explain}</p>
    </div>
  );
}

function MonthTable({ month, asked }: Props) {
  const t = useText();
  const w = t.quotes.month;
  const format = useFormat();
  const isShort = asked.chairHours != null;
  const rows = month.kinds.map((kind, place) => {
    return { kind, place, number: String(asked.kinds[place]?.number ?? 0) };
  });
  return (
    <Scroller>
      <table className={`${css.lines ?? ''} ${css.month ?? ''}`} aria-label={w.table}>
        <thead>
          <tr>
            <th scope="col">{w.kind}</th>
            <th scope="col">{w.each}</th>
            <th scope="col">{w.share}</th>
            <th scope="col">{w.perHour}</th>
            <th scope="col">{w.planned}</th>
            <th scope="col">{w.needed}</th>
            {isShort && <th scope="col">{w.first}</th>}
            {isShort && <th scope="col">{w.fits}</th>}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ kind, number, place }) => (
            <tr key={place}>
              <th scope="row">{kind.name}</th>
              <td>
                <Money value={kind.contribution} />
              </td>
              <td>
                {kind.contributionShare === null
                  ? t.ui.none
                  : format.percent(kind.contributionShare)}
              </td>
              <td>
                <Money value={kind.contributionPerHour} />
              </td>
              <td>{format.number(number)}</td>
              <td>
                <strong>
                  {kind.neededWhole === null ? t.ui.none : format.number(String(kind.neededWhole))}
                </strong>
              </td>
              {isShort && <td>{kind.rank === null ? t.ui.none : w.place(kind.rank)}</td>}
              {isShort && <td>{kind.fits === null ? t.ui.none : format.roughly(kind.fits)}</td>}
            </tr>
          ))}
        </tbody>
      </table>
    </Scroller>
  );
}
