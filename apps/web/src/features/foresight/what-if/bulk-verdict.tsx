import type { ReactNode } from 'react';
import { formatMoney, moneyFromMicro } from '#lib/measure';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { micro } from '../../../ui/drawn.js';
import { StatusMark } from '../../../ui/status-mark.js';
import { Amount, Money } from '../../../ui/values.js';
import type { BulkAnswer } from '../api/what-if.js';
import css from './what-if.module.css';

/** Yes or no first, then why, then every figure on the way from the paper to the real saving. */
export function BulkVerdict({ answer }: { readonly answer: BulkAnswer }) {
  const t = useText();
  const format = useFormat();
  const words = t.foresight.bulk;
  const { worthIt, savingRange } = answer;
  const loss = (value: string) => value.replace(/^-/, '');
  const sentence = worthIt
    ? words.worth(format.money(answer.realSaving), format.money(answer.paperSaving))
    : words.notWorth(format.money(loss(answer.realSaving)), format.money(answer.paperSaving));
  const same = savingRange.p10 === savingRange.p90;
  return (
    <div className={css.verdict} role="status">
      <StatusMark tone={worthIt ? 'good' : 'danger'}>{worthIt ? words.yes : words.no}</StatusMark>
      <p className={css.sentence}>{sentence}</p>
      <p className={css.quiet}>
        {!same && <>{words.range(format.money(savingRange.p10), format.money(savingRange.p90))} </>}
        <Cover answer={answer} />
      </p>
      <Way answer={answer} />
    </div>
  );
}

const MONTH_DAYS = 30.4375;

function Cover({ answer }: { readonly answer: BulkAnswer }) {
  const t = useText();
  const format = useFormat();
  const words = t.foresight.bulk;
  const months = (days: number) => format.number((days / MONTH_DAYS).toFixed(1));
  const { coverDays, coverAheadDays, usableDays } = answer;
  return (
    <>
      {words.cover(months(coverDays), months(coverAheadDays))}{' '}
      {usableDays === null
        ? words.neverExpires
        : words.expires(months(usableDays), format.percent(answer.chanceUsedUp))}
    </>
  );
}

const text = (value: bigint) => formatMoney(moneyFromMicro(value));

/** Each line is a step, and they add up to the last one exactly. */
function Way({ answer }: { readonly answer: BulkAnswer }) {
  const t = useText();
  const format = useFormat();
  const words = t.foresight.bulk.way;
  const [usual, total, keeping, orders, real] = [
    ...[micro(answer.usualTotal), micro(answer.total), micro(answer.extraKeeping)],
    ...[micro(answer.savedOrders), micro(answer.realSaving)],
  ] as [bigint, bigint, bigint, bigint, bigint];
  // What expires would not have been bought the usual way.
  const wasted = usual - total - keeping + orders - real;
  const lines: readonly (readonly [string, string])[] = [
    [words.usual, answer.usualTotal],
    [words.offer, text(-total)],
    [words.waste, text(-wasted)],
    [words.keeping, text(-keeping)],
    [words.orders, answer.savedOrders],
  ];
  return (
    <table className={css.way} aria-label={words.label}>
      <tbody>
        {lines.map(([name, value]) => (
          <Line key={name} name={name}>
            <Money value={value} />
          </Line>
        ))}
        <Line name={words.real} strong>
          <Money value={answer.realSaving} />
        </Line>
        <Line name={words.expectedWaste}>
          <Amount value={answer.expectedWaste} unit={answer.consumable.unit} rough />
        </Line>
        {answer.costPerUsedUnit !== null && (
          <Line name={words.perUsed(format.unitName('1', answer.consumable.unit))}>
            <Money value={answer.costPerUsedUnit} />
          </Line>
        )}
      </tbody>
    </table>
  );
}

interface LineProps {
  readonly name: string;
  readonly strong?: boolean;
  readonly children: ReactNode;
}

function Line({ name, strong, children }: LineProps) {
  return (
    <tr data-strong={strong}>
      <th scope="row">{name}</th>
      <td>{children}</td>
    </tr>
  );
}
