import type { Reason } from '#lib/dentition';
import type { Language } from './quote.dto.js';

interface Words {
  readonly title: string;
  readonly chart: string;
  readonly date: string;
  readonly plan: string;
  readonly noPlan: string;
  readonly left: (deductible: string, maximum: string | null) => string;
  readonly asOf: (day: string) => string;
  readonly amounts: (currency: string) => string;
  readonly groups: Readonly<Record<'insured' | 'cosmetic', string>>;
  readonly columns: readonly [string, string, string, string, string];
  readonly tooth: string;
  readonly reasons: Readonly<Record<Reason, string>>;
  readonly visit: (number: number) => string;
  readonly notCovered: string;
  readonly sum: string;
  readonly total: string;
  readonly caution: string;
  readonly changes: string;
  readonly signature: string;
}

const EN: Words = {
  title: 'Estimate',
  chart: 'Chart reference',
  date: 'Date',
  plan: 'Plan',
  noPlan: 'No plan was taken into account.',
  left: (deductible, maximum) =>
    `Left of the deductible: ${deductible}. Left of the yearly maximum: ${maximum ?? 'no maximum'}.`,
  asOf: (day) => `As of ${day}.`,
  amounts: (currency) => `All amounts in ${currency}.`,
  groups: { insured: 'Work for decay, fracture or wear', cosmetic: 'Cosmetic work' },
  columns: ['Work', 'Fee', 'Reduction', 'Plan pays', 'Patient pays'],
  tooth: 'Tooth',
  reasons: { decay: 'decay', fracture: 'fracture', wear: 'wear', cosmetic: 'cosmetic' },
  visit: (number) => `visit ${number}`,
  notCovered: 'not covered by the plan',
  sum: 'Sum',
  total: 'Total',
  caution:
    "This is an estimate and no promise of payment. Local law and the plan's terms decide what is " +
    'paid and what may be charged.',
  changes: 'What is found during treatment can change it. It is not a bill.',
  signature: 'Date and signature',
};

const DE: Words = {
  title: 'Kostenvoranschlag (Schätzung)',
  chart: 'Karteinummer',
  date: 'Datum',
  plan: 'Versicherung',
  noPlan: 'Eine Versicherung wurde nicht berücksichtigt.',
  left: (deductible, maximum) =>
    `Noch offener Selbstbehalt: ${deductible}. Rest der Jahreshöchstleistung: ${maximum ?? 'unbegrenzt'}.`,
  asOf: (day) => `Stand ${day}.`,
  amounts: (currency) => `Alle Beträge in ${currency}.`,
  groups: {
    insured: 'Behandlung wegen Karies, Bruch oder Abnutzung',
    cosmetic: 'Kosmetische Behandlung',
  },
  columns: ['Leistung', 'Honorar', 'Nachlass', 'Versicherung zahlt', 'Patient zahlt'],
  tooth: 'Zahn',
  reasons: { decay: 'Karies', fracture: 'Bruch', wear: 'Abnutzung', cosmetic: 'kosmetisch' },
  visit: (number) => `Sitzung ${number}`,
  notCovered: 'nicht versichert',
  sum: 'Summe',
  total: 'Gesamt',
  caution:
    'Dies ist eine Schätzung und keine Zusage. Was bezahlt wird und was berechnet werden darf, ' +
    'entscheiden das örtliche Recht und die Bedingungen der Versicherung.',
  changes: 'Befunde während der Behandlung können sie ändern. Dies ist keine Rechnung.',
  signature: 'Datum und Unterschrift',
};

export const ESTIMATE_WORDS: Readonly<Record<Language, Words>> = { en: EN, de: DE };

/** 2026-11-25, in German 25.11.2026. */
export function dayText(day: string, language: Language): string {
  return language === 'de' ? day.split('-').reverse().join('.') : day;
}

const LATIN = /[\u0020-\u007e\u00a0-\u00ff€‚„…‘’“”–—ŠšŽžŒœŸ]/u;

const STROKED = new Map(Object.entries({ Ł: 'L', ł: 'l', Đ: 'D', đ: 'd', Ħ: 'H', ħ: 'h', ı: 'i' }));

/** The standard fonts know western letters only: others lose their marks, or become a question mark. */
export function printable(text: string): string {
  return [...text.normalize('NFC')]
    .map((letter) => {
      if (LATIN.test(letter)) return letter;
      const bare = STROKED.get(letter) ?? letter.normalize('NFD').charAt(0);
      return LATIN.test(bare) ? bare : '?';
    })
    .join('');
}
