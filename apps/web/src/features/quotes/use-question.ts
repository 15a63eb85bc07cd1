import { useQueries, useQueryClient } from '@tanstack/react-query';
import { useEffect, useRef } from 'react';
import type { ToothNotation } from '#lib/dentition';
import { useSession } from '../../app/session.js';
import { useText } from '../../text/text-provider.js';
import { useForm } from '../../ui/use-form.js';
import { templateQuery } from './api/choices.js';
import { quoteQuery } from './api/make-quote.js';
import { checkQuestion } from './check-question.js';
import { type Draft, draftOf, type QuestionWords, requestOf, wordsOf } from './question.js';
import { newRow, type Row } from './row.js';

const ROW_FIELDS = [
  'tooth',
  'surfaces',
  'reason',
  'templateId',
  'cavityClass',
  'size',
  'shades',
  'fee',
  'minutes',
  'retakes',
  'lengthMm',
  'widthMm',
  'depthMm',
];
/** Where the form names a field otherwise than the service. */
const FORM_NAMES: Readonly<Record<string, string>> = { feeCode: 'fee', attempts: 'retakes' };
const OWN_FIELDS = [
  'chartReference',
  'planId',
  'balance.deductibleLeft',
  'balance.maximumLeft',
  'quotedOn',
  'targetContributionPerHour',
  'setUpMinutes',
  'chairMinuteCost',
];

/** The field of the form beside which the service's words about a path can be read. */
function fieldOf(path: string): string {
  const [, row, name = ''] = /^(restorations\[\d+\])\.?(\w*)/.exec(path) ?? [];
  if (row !== undefined) {
    const field = FORM_NAMES[name] ?? name;
    return ROW_FIELDS.includes(field) ? `${row}.${field}` : row;
  }
  if (path === 'balance') return 'balance.deductibleLeft';
  return OWN_FIELDS.includes(path) ? path : 'restorations';
}

/** The templates of the rows, as far as they are known. */
function useTemplates(rows: readonly Row[]) {
  const ids = [...new Set(rows.map(({ templateId }) => templateId))].filter((id) => id !== '');
  const found = useQueries({ queries: ids.map((id) => templateQuery(id)) });
  return (id: string) => found[ids.indexOf(id)]?.data;
}

const withRow = (draft: Draft): Draft =>
  draft.restorations.length > 0 ? draft : { ...draft, restorations: [newRow()] };

/** The typed question. Comparing writes it into the address, and only then it is asked. */
export function useQuestion(words: QuestionWords, onAsk: (words: QuestionWords) => void) {
  const t = useText();
  const notation: ToothNotation = useSession().practice.toothNotation;
  const queries = useQueryClient();
  const address = JSON.stringify(wordsOf(draftOf(words, notation), notation));
  const written = useRef(address);
  // The rows are known only once the form is; what `check` wants of them it asks when it is called.
  const known = useRef<ReturnType<typeof useTemplates>>(() => undefined);
  const form = useForm<Draft, QuestionWords>({
    initial: withRow(draftOf(words, notation)),
    fieldOf,
    check: (draft) => checkQuestion(draft, { notation, templateOf: known.current, t }),
    send: async (draft) => {
      const request = requestOf(draft, notation);
      if (request) await queries.fetchQuery(quoteQuery(request));
      return wordsOf(draft, notation);
    },
    onDone: (asked) => {
      written.current = JSON.stringify(asked);
      onAsk(asked);
    },
  });
  const templateOf = useTemplates(form.values.restorations);
  known.current = templateOf;
  const reset = useRef(form.reset);
  reset.current = form.reset;
  // Going back in the browser, or another link: the form follows the address.
  useEffect(() => {
    if (written.current === address) return;
    written.current = address;
    reset.current(withRow(draftOf(JSON.parse(address) as QuestionWords, notation)));
  }, [address, notation]);
  return {
    form,
    notation,
    templateOf,
    asked: requestOf(draftOf(words, notation), notation),
    isStale: JSON.stringify(wordsOf(form.values, notation)) !== address,
  };
}

export type Question = ReturnType<typeof useQuestion>;
