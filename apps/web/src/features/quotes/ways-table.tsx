import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import css from './answer.module.css';
import type { Quote, Way } from './api/make-quote.js';
import { type FigureId, figureOf, figuresFor, MAIN } from './figures.js';
import { Scroller } from './scroller.js';
import { codeOf, incomeOf, isWhole, minus } from './ways.js';

interface Props {
  readonly quote: Quote;
}

/** The ways side by side; where a way that does all the work differs from the first, it says so. */
export function WaysTable({ quote }: Props) {
  const w = useText().quotes;
  return (
    <Scroller>
      <table className={css.ways} aria-label={w.sideBySide}>
        <thead>
          <tr>
            <td />
            {quote.ways.map((way) => (
              <WayHead key={way.way} way={way} quote={quote} />
            ))}
          </tr>
        </thead>
        <tbody>
          {figuresFor(quote).map((id) => (
            <tr key={id} data-main={MAIN.includes(id) || undefined}>
              <th scope="row">
                {w.figures[id]}
                <span className={css.what}>{w.figureHints[id]}</span>
              </th>
              {quote.ways.map((way) => (
                <Cell key={way.way} id={id} way={way} quote={quote} />
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </Scroller>
  );
}

interface CellProps extends Props {
  readonly way: Way;
}

function WayHead({ way, quote }: CellProps) {
  const w = useText().quotes;
  return (
    <th scope="col" data-part={!isWhole(way, quote) || undefined}>
      {w.ways[codeOf(way)]}
      <span className={css.what}>
        {w.visits(way.visits.length)}, {w.restorations(way.lines.length)}
      </span>
      {!isWhole(way, quote) && <span className={css.what}>{w.partOnly}</span>}
    </th>
  );
}

function Cell({ id, way, quote }: CellProps & { readonly id: FigureId }) {
  const t = useText();
  const w = t.quotes;
  const show = useShow(id);
  const whole = isWhole(way, quote);
  const first = quote.ways[0];
  const { value, more } = figureOf(id, way, whole && way !== first ? first : undefined);
  return (
    <td data-part={!whole || undefined} data-differs={more !== undefined || undefined}>
      {value === null ? t.ui.none : show(value)}
      {more !== undefined && (
        <span className={css.more}>
          {more.startsWith('-') ? w.less(show(more.slice(1))) : w.more(show(more))}
        </span>
      )}
      {id === 'neededIncome' && <Reached way={way} />}
    </td>
  );
}

function useShow(id: FigureId): (value: string) => string {
  const format = useFormat();
  const w = useText().quotes;
  return (value) => (id === 'minutes' ? w.min(format.number(value)) : format.money(value));
}

/** Whether plan and patient pay as much as the wished contribution per hour needs. */
function Reached({ way }: { readonly way: Way }) {
  const w = useText().quotes;
  const format = useFormat();
  if (way.neededIncome === null) return null;
  const over = minus(incomeOf(way), way.neededIncome);
  const isShort = over.startsWith('-');
  return (
    <span className={css.what}>
      {isShort ? w.shortBy(format.money(over.slice(1))) : w.overBy(format.money(over))}
    </span>
  );
}
