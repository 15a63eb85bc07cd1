import { NativeSelect } from '@mantine/core';
import { useEffect, useRef } from 'react';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { Section } from '../../ui/section.js';
import css from './answer.module.css';
import type { Quote } from './api/make-quote.js';
import { EstimateSection } from './estimate-section.js';
import { LinesTable } from './lines-table.js';
import { MonthPanel, type MonthWords } from './month-panel.js';
import type { QuoteQuestion } from './question.js';
import { RangeStrips } from './range-strips.js';
import { Repeats } from './repeats.js';
import { chosenWay, codeOf, type WayCode } from './ways.js';
import { WaysTable } from './ways-table.js';

export interface AnswerWords extends MonthWords {
  readonly way?: WayCode | undefined;
  readonly lang?: 'en' | 'de' | undefined;
}

interface Props {
  readonly asked: QuoteQuestion;
  readonly quote: Quote;
  readonly words: AnswerWords;
  readonly onChange: (words: AnswerWords) => void;
  readonly isStale: boolean;
  /** How often it was asked for on this screen: each time the eye is led to the answer. */
  readonly asks: number;
}

/** What a question came to: the ways side by side, and behind them every restoration. */
export function Answer({ asked, quote, words, onChange, isStale, asks }: Props) {
  const w = useText().quotes;
  const place = useRef<HTMLElement>(null);
  useEffect(() => {
    if (asks > 0) place.current?.focus();
  }, [asks]);
  const way = chosenWay(quote, words.way);
  if (!way) return null;
  return (
    <section
      ref={place}
      tabIndex={-1}
      className={css.answer}
      aria-label={w.answer}
      data-stale={isStale || undefined}
    >
      <p className={css.stale} role="status">
        {isStale ? w.stale : ''}
      </p>
      <Section title={w.sideBySide} hint={quote.ways.length > 1 ? w.differences : w.oneKind}>
        <WaysTable quote={quote} />
        <Unpriced quote={quote} />
      </Section>
      <Repeats quote={quote} />
      <Section title={w.rangeTitle} hint={w.rangeHint}>
        <RangeStrips quote={quote} />
      </Section>
      <Section title={w.lines.title} hint={w.lines.hint}>
        {quote.ways.length > 1 && (
          <div className={`${css.choice ?? ''} tb-screen-only`}>
            <NativeSelect
              label={w.lines.way}
              value={codeOf(way)}
              data={quote.ways.map((each) => ({
                value: codeOf(each),
                label: w.ways[codeOf(each)],
              }))}
              onChange={(event) => {
                const found = quote.ways.find((each) => codeOf(each) === event.currentTarget.value);
                if (found) onChange({ way: codeOf(found) });
              }}
            />
          </div>
        )}
        <TakenIntoAccount quote={quote} />
        <LinesTable quote={quote} way={way} />
      </Section>
      <EstimateSection
        asked={asked}
        quote={quote}
        way={way}
        language={words.lang}
        onLanguage={(lang) => onChange({ lang })}
      />
      <MonthPanel quote={quote} way={way} words={words} onChange={onChange} />
    </section>
  );
}

function Unpriced({ quote }: { readonly quote: Quote }) {
  const w = useText().quotes;
  if (quote.unpriced.length === 0) return null;
  const names = quote.unpriced.map(({ name, shade }) => (shade ? `${name}, ${shade}` : name));
  return <p className={css.unpriced}>{w.unpriced(names.join('; '))}</p>;
}

/** The plan and its figures on which the answer rests. */
function TakenIntoAccount({ quote }: { readonly quote: Quote }) {
  const w = useText().quotes;
  const format = useFormat();
  const { plan } = quote;
  const on = w.on(format.day(quote.quotedOn), quote.chartReference);
  if (plan === null) return <p className={css.facts}>{`${on} ${w.withoutPlan}`}</p>;
  const maximum = plan.maximumLeft === null ? null : format.money(plan.maximumLeft);
  const ceilings: Readonly<Record<string, string>> = w.ceilings;
  const left = w.left(format.money(plan.deductibleLeft), maximum);
  return (
    <div className={css.facts}>
      <p>{`${on} ${plan.name}, ${plan.inNetwork ? w.inNetwork : w.outOfNetwork}.`}</p>
      <p>
        {plan.leftAsOf === null
          ? `${left} ${w.leftStated}`
          : `${left} ${w.leftAsOf(format.day(plan.leftAsOf))}`}
      </p>
      <p>
        {`${ceilings[plan.feeCeiling] ?? ''} ${w.ceilingSource(plan.ceilingSource, format.day(plan.ceilingCheckedOn))}`}
      </p>
    </div>
  );
}
