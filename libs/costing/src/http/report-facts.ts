import { germanDay } from '../domain/paper.js';
import { type FileLanguage, germanCell } from '../domain/table-words.js';

interface Asked {
  readonly from?: string | undefined;
  readonly to?: string | undefined;
  readonly reason?: string | undefined;
  readonly templateId?: string | undefined;
  readonly dentistId?: string | undefined;
  readonly lang?: FileLanguage | undefined;
}

interface Named {
  readonly templateName?: string | null;
  readonly dentistName?: string | null;
}

/** What a report was made for, in sentences for its file: days, and which restorations. */
export function factsOf(asked: Asked, rows: readonly Named[] = []): string[] {
  const { reason, templateId, dentistId } = asked;
  const [first] = rows;
  const words = asked.lang === 'de' ? DE : EN;
  return [
    words.period(asked.from, asked.to),
    ...(reason === undefined ? [] : [words.reason(reason)]),
    ...(templateId === undefined ? [] : [words.only(first?.templateName ?? words.template)]),
    ...(dentistId === undefined ? [] : [words.only(first?.dentistName ?? words.dentist)]),
  ];
}

interface FactWords {
  readonly period: (from: string | undefined, to: string | undefined) => string;
  readonly reason: (reason: string) => string;
  readonly only: (name: string) => string;
  readonly template: string;
  readonly dentist: string;
}

const EN: FactWords = {
  period: (from, to) => {
    if (from === undefined) return to === undefined ? 'All days.' : `Until ${to}.`;
    return to === undefined ? `From ${from}.` : `${from} to ${to}.`;
  },
  reason: (reason) => `Only reason ${reason}.`,
  only: (name) => `Only ${name}.`,
  template: 'one template',
  dentist: 'one dentist',
};

const DE: FactWords = {
  period: (from, to) => {
    if (from === undefined) return to === undefined ? 'Alle Tage.' : `Bis ${germanDay(to)}.`;
    const start = germanDay(from);
    return to === undefined ? `Ab ${start}.` : `${start} bis ${germanDay(to)}.`;
  },
  reason: (reason) => `Nur Grund ${germanCell('reason', reason)}.`,
  only: (name) => `Nur ${name}.`,
  template: 'eine Vorlage',
  dentist: 'eine Person',
};
