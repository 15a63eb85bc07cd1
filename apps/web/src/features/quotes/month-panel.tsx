import { Button, TextInput } from '@mantine/core';
import { useQuery, useQueryClient } from '@tanstack/react-query';
import { useFormat } from '../../app/use-format.js';
import type { Text } from '../../text/text.js';
import { useText } from '../../text/text-provider.js';
import { asDecimal } from '../../ui/decimal-text.js';
import { DecimalField } from '../../ui/fields.js';
import { FieldRow, Form, FormActions } from '../../ui/form.js';
import { Section } from '../../ui/section.js';
import { type FieldErrors, useForm } from '../../ui/use-form.js';
import css from './answer.module.css';
import type { Quote, QuotedLine, Way } from './api/make-quote.js';
import { monthQuery } from './api/work-out-month.js';
import {
  type MonthDraft,
  type MonthWords,
  monthDraft,
  monthQuestion,
  monthWords,
} from './month.js';
import { MonthResult } from './month-result.js';

export type { MonthWords } from './month.js';

interface Props {
  readonly quote: Quote;
  readonly way: Way;
  readonly words: MonthWords;
  readonly onChange: (words: MonthWords) => void;
}

const isAmount = (typed: string) => {
  const decimal = asDecimal(typed);
  return decimal !== undefined && !decimal.startsWith('-');
};

function check(draft: MonthDraft, t: Text): FieldErrors {
  const { errors } = t.quotes;
  const wrong: Record<string, string | undefined> = {};
  if (draft.fixedCost.trim() === '') wrong.fixedCost = t.ui.required;
  for (const name of ['fixedCost', 'targetProfit', 'chairHours'] as const) {
    if (draft[name].trim() !== '' && !isAmount(draft[name])) wrong[name] = errors.amount;
  }
  draft.numbers.forEach((number, i) => {
    if (!/^\d{0,6}$/.test(number.trim())) wrong[`numbers[${i}]`] = errors.whole;
  });
  return wrong;
}

/** How many of these a month pay for the fixed cost, and which go first when hours are short. */
export function MonthPanel({ quote, way, words, onChange }: Props) {
  const t = useText();
  const w = t.quotes.month;
  const { currency } = useFormat();
  const queries = useQueryClient();
  const nameOf = (of: Quote, line: QuotedLine) => {
    const made = of.restorations[line.restoration];
    const reasons: Readonly<Record<string, string>> = t.quotes.reasons;
    if (!made) return '';
    const reason = reasons[made.reason] ?? made.reason;
    return `${t.quotes.toothOf(made.tooth, made.surfaces)}, ${made.template.name}, ${reason}`;
  };
  const of = { quote, way, nameOf };
  const draft = monthDraft(words, quote.restorations.length);
  const form = useForm<MonthDraft, Required<MonthWords>>({
    initial: draft,
    // Kinds are those of the way; a number belongs to its restoration.
    fieldOf: (path) => (path.startsWith('kinds') ? 'chairHours' : path),
    check: (values) => check(values, t),
    send: async (values) => {
      const asked = monthQuestion(values, of);
      if (asked) await queries.fetchQuery(monthQuery(asked));
      return monthWords(values);
    },
    onDone: onChange,
  });
  const asked = monthQuestion(draft, of);
  return (
    <Section title={w.title} hint={w.hint}>
      <div className="tb-screen-only">
        <Form form={form}>
          <div className={css.fields}>
            <FieldRow>
              <DecimalField
                label={w.fixed}
                hint={w.fixedHint}
                unit={currency}
                {...form.field('fixedCost')}
              />
              <DecimalField
                label={w.profit}
                hint={t.quotes.optional}
                unit={currency}
                {...form.field('targetProfit')}
              />
              <DecimalField
                label={w.hours}
                hint={w.hoursHint}
                unit="h"
                {...form.field('chairHours')}
              />
            </FieldRow>
            <Numbers form={form} way={way} nameOf={(line) => nameOf(quote, line)} />
            <FormActions>
              <Button type="submit" variant="default" loading={form.isSending}>
                {w.workOut}
              </Button>
            </FormActions>
          </div>
        </Form>
      </div>
      {asked && <Worked asked={asked} />}
    </Section>
  );
}

function Worked({ asked }: { readonly asked: Parameters<typeof monthQuery>[0] }) {
  const month = useQuery(monthQuery(asked)).data;
  return month ? <MonthResult month={month} asked={asked} /> : null;
}

interface NumbersProps {
  readonly form: ReturnType<typeof useForm<MonthDraft, Required<MonthWords>>>;
  readonly way: Way;
  readonly nameOf: (line: QuotedLine) => string;
}

function Numbers({ form, way, nameOf }: NumbersProps) {
  const w = useText().quotes.month;
  const { numbers } = form.values;
  return (
    <table className={`${css.plain ?? ''} ${css.numbers ?? ''}`}>
      <thead>
        <tr>
          <th scope="col">{w.kind}</th>
          <th scope="col">{w.number}</th>
        </tr>
      </thead>
      <tbody>
        {way.lines.map((line) => {
          const i = line.restoration;
          return (
            <tr key={i}>
              <th scope="row">{nameOf(line)}</th>
              <td>
                <TextInput
                  aria-label={w.numberOf(nameOf(line))}
                  name={`numbers[${i}]`}
                  inputMode="numeric"
                  maxLength={6}
                  value={numbers[i] ?? ''}
                  error={form.errorAt(`numbers[${i}]`)}
                  onChange={(event) => {
                    const typed = event.currentTarget.value;
                    form.set(
                      'numbers',
                      numbers.map((each, at) => (at === i ? typed : each)),
                    );
                    form.clearAt(`numbers[${i}]`);
                  }}
                />
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
