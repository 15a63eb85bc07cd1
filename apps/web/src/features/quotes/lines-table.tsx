import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { Money } from '../../ui/values.js';
import css from './answer.module.css';
import type { Quote, QuotedLine, Way } from './api/make-quote.js';
import { Scroller } from './scroller.js';
import { isCosmetic, plus } from './ways.js';

interface Props {
  readonly quote: Quote;
  readonly way: Way;
}

/** Every restoration of a way, what the plan may cover and what is cosmetic kept apart. */
export function LinesTable({ quote, way }: Props) {
  const w = useText().quotes;
  const groups = [
    { id: 'insured', lines: way.lines.filter((line) => !isCosmetic(quote, line)) },
    { id: 'cosmetic', lines: way.lines.filter((line) => isCosmetic(quote, line)) },
  ] as const;
  const wished = quote.targetContributionPerHour !== null;
  const columns = [...AMOUNTS.map((id) => w.lines[id]), w.lines.minutes];
  if (wished) columns.push(w.lines.lowestFee);
  return (
    <Scroller>
      <table className={css.lines} aria-label={w.lines.title}>
        <thead>
          <tr>
            <th scope="col">{w.lines.work}</th>
            {columns.map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        {groups.map(({ id, lines }) =>
          lines.length === 0 ? null : (
            <tbody key={id}>
              <tr data-group>
                <th scope="rowgroup" colSpan={columns.length + 1}>
                  {w.kinds[id]}
                </th>
              </tr>
              {lines.map((line) => (
                <LineRow key={line.restoration} line={line} quote={quote} way={way} />
              ))}
              {lines.length > 1 && <SumRow lines={lines} quote={quote} />}
            </tbody>
          ),
        )}
      </table>
    </Scroller>
  );
}

const AMOUNTS = ['fee', 'planPays', 'patientPays', 'writeOff', 'material'] as const;

function LineRow({ line, quote, way }: Props & { readonly line: QuotedLine }) {
  const w = useText().quotes;
  const format = useFormat();
  const saved = line.material !== line.materialAlone;
  return (
    <tr>
      <th scope="row">
        <Work line={line} quote={quote} way={way} />
      </th>
      {AMOUNTS.map((id) => (
        <td key={id}>
          <Money value={line[id]} />
          {id === 'material' && saved && (
            <span className={css.what}>{w.lines.alone(format.money(line.materialAlone))}</span>
          )}
        </td>
      ))}
      <td>{w.min(format.number(String(line.minutes)))}</td>
      {quote.targetContributionPerHour !== null && (
        <td>
          <LowestFee line={line} />
        </td>
      )}
    </tr>
  );
}

function LowestFee({ line }: { readonly line: QuotedLine }) {
  const w = useText().quotes;
  const format = useFormat();
  if (line.lowestFee !== null) return <Money value={line.lowestFee} />;
  return (
    <>
      {w.lines.notReached}
      {line.incomeLimit !== null && (
        <span className={css.what}>{w.lines.limit(format.money(line.incomeLimit))}</span>
      )}
    </>
  );
}

function Work({ line, quote, way }: Props & { readonly line: QuotedLine }) {
  const t = useText();
  const w = t.quotes;
  const format = useFormat();
  const made = quote.restorations[line.restoration];
  if (!made) return null;
  const { reason, coverage, allowedFee, alternateFee, recorded } = made;
  const reasons: Readonly<Record<string, string>> = w.reasons;
  const planned = [
    ...(made.attempts > 1 ? [w.rare.again(made.attempts - 1)] : []),
    ...(made.withoutAnaesthetic ? [w.rare.numbless] : []),
    ...(made.volumeSource === 'planning value'
      ? []
      : [w.rare.volume(format.number(made.volumeMm3))]),
  ];
  const facts = [
    reasons[reason] ?? reason,
    ...(way.visits.length > 1 ? [w.lines.visit(line.visit + 1)] : []),
    ...(quote.plan && !line.covered ? [w.lines.notCovered] : []),
    ...(line.covered && coverage !== null ? [w.lines.covered(format.percent(coverage))] : []),
    ...(line.exhausted ? [w.lines.exhausted] : []),
    ...(allowedFee === null ? [] : [w.lines.allowed(format.money(allowedFee))]),
    ...(alternateFee === null ? [] : [w.lines.alternate(format.money(alternateFee))]),
    ...planned,
    w.lines.recorded(recorded),
  ];
  return (
    <>
      {w.toothOf(made.tooth, made.surfaces)} {made.feeCode ?? ''}
      <span className={css.what}>{made.template.name}</span>
      <span className={css.what}>{facts.join(', ')}</span>
    </>
  );
}

function SumRow({
  lines,
  quote,
}: {
  readonly lines: readonly QuotedLine[];
  readonly quote: Quote;
}) {
  const w = useText().quotes;
  const format = useFormat();
  const minutes = lines.reduce((sum, line) => sum + line.minutes, 0);
  return (
    <tr data-sum>
      <th scope="row">{w.lines.sum}</th>
      {AMOUNTS.map((id) => (
        <td key={id}>
          <Money value={plus(...lines.map((line) => line[id]))} />
        </td>
      ))}
      <td>{w.min(format.number(String(minutes)))}</td>
      {quote.targetContributionPerHour !== null && <td />}
    </tr>
  );
}
