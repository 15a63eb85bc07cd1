import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { micro } from '../../../ui/drawn.js';
import { Section } from '../../../ui/section.js';
import type { Replay, ReplayResult } from '../api/replays.js';
import { ItemTable } from './item-table.js';
import css from './proof.module.css';
import { SidePairs } from './side-pairs.js';
import { WeekChart } from './week-chart.js';

interface Props {
  readonly replay: Replay;
  readonly result: ReplayResult;
}

/** Both sides in sum, over the weeks, by item, and what was taken for granted. */
export function ReplayResultView({ replay, result }: Props) {
  const t = useText();
  const format = useFormat();
  const words = t.foresight.proof;
  return (
    <>
      <p className={css.verdict}>{useVerdict(result)}</p>
      <Section
        title={words.sum}
        hint={words.sumHint(
          format.number(String(result.items.length)),
          format.day(replay.firstDay),
          format.day(replay.lastDay),
        )}
      >
        <SidePairs result={result} />
      </Section>
      {result.weeks.length > 1 && (
        <Section title={words.weeks} hint={words.weeksHint}>
          <WeekChart weeks={result.weeks} />
        </Section>
      )}
      <ItemTable items={result.items} />
      <Assumptions result={result} />
    </>
  );
}

/** In one sentence: better or worse for the patient's day, and what it costs. */
function useVerdict({ computed, old }: ReplayResult): string {
  const t = useText();
  const format = useFormat();
  const words = t.foresight.proof.verdict;
  const n = (value: number) => format.number(String(value));
  const days = words.days(n(computed.stockOutDays), n(old.stockOutDays));
  const more = micro(computed.averageValue) >= micro(old.averageValue);
  const value = words.stock(format.money(computed.averageValue), format.money(old.averageValue));
  const waste = words.waste(format.money(computed.wastedValue), format.money(old.wastedValue));
  return `${days} ${waste} ${more ? words.more : words.less} ${value}`;
}

function Assumptions({ result }: { readonly result: ReplayResult }) {
  const t = useText();
  const format = useFormat();
  const words = t.foresight.proof.assumed;
  const { settings, notUsed, notBought, withoutPrice, computed } = result;
  const { serviceMeasure, serviceLevel, reviewDays, reckonDays } = settings;
  const measure = t.foresight.whatIf.measures[serviceMeasure];
  const lines = [
    words.settings(measure, format.percent(serviceLevel), reviewDays),
    words.noLookAhead(reckonDays),
    words.old,
    words.world,
    words.owed,
    ...(notUsed > 0 ? [words.notUsed(notUsed)] : []),
    ...(notBought > 0 ? [words.notBought(notBought)] : []),
    ...(withoutPrice > 0 ? [words.withoutPrice(withoutPrice)] : []),
    computed.sent === null ? words.simple : words.sending,
    words.late,
  ];
  return (
    <Section title={words.title}>
      <ul className={css.assumed}>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </Section>
  );
}
