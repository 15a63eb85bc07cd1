import type { Reason } from '#lib/dentition';
import type { Language } from './quote.dto.js';

export interface EstimateWords {
  readonly title: string;
  readonly chart: string;
  readonly date: string;
  readonly plan: string;
  readonly noPlan: string;
  readonly left: (deductible: string, maximum: string | null) => string;
  readonly asOf: (day: string) => string;
  readonly leftOfPlan: string;
  readonly amountsIn: string;
  readonly groups: Readonly<Record<'insured' | 'cosmetic', string>>;
  readonly columns: readonly [string, string, string, string, string];
  readonly tooth: string;
  readonly reasons: Readonly<Record<Reason, string>>;
  readonly visit: (number: number) => string;
  readonly notCovered: string;
  readonly sum: string;
  readonly total: string;
  readonly reduction: string;
  readonly caution: string;
  readonly changes: string;
  readonly day: string;
  readonly signature: string;
  readonly page: (number: number, of: number) => string;
}

const EN: EstimateWords = {
  title: 'Estimate',
  chart: 'Chart reference',
  date: 'Date',
  plan: 'Plan',
  noPlan: 'none was taken into account',
  leftOfPlan: 'Left of the plan',
  left: (deductible, maximum) =>
    `${deductible} of the deductible, ${maximum === null ? 'no yearly maximum' : `${maximum} of the yearly maximum`},`,
  asOf: (day) => `as of ${day}`,
  amountsIn: 'All amounts in',
  groups: { insured: 'Work for decay, fracture or wear', cosmetic: 'Cosmetic work' },
  columns: ['Work', 'Fee', 'Reduction', 'Plan pays', 'Patient pays'],
  tooth: 'Tooth',
  reasons: { decay: 'decay', fracture: 'fracture', wear: 'wear', cosmetic: 'cosmetic' },
  visit: (number) => `visit ${number}`,
  notCovered: 'not covered',
  sum: 'Sum',
  total: 'Total',
  reduction: "Reduction: what the practice may not charge under the plan's terms.",
  caution:
    "This is an estimate and no promise of payment. Local law and the plan's terms decide what is " +
    'paid and what may be charged.',
  changes: 'What is found during treatment can change it. It is not a bill.',
  day: 'Date',
  signature: 'Signature',
  page: (number, of) => `Page ${number} of ${of}`,
};

const DE: EstimateWords = {
  title: 'Kostenvoranschlag (Schätzung)',
  chart: 'Karteinummer',
  date: 'Datum',
  plan: 'Versicherung',
  noPlan: 'keine wurde berücksichtigt',
  leftOfPlan: 'Rest des Jahres',
  left: (deductible, maximum) =>
    `${deductible} Selbstbehalt offen, ${maximum === null ? 'keine Höchstleistung' : `${maximum} der Höchstleistung übrig`},`,
  asOf: (day) => `Stand ${day}`,
  amountsIn: 'Alle Beträge in',
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
  reduction: 'Nachlass: was die Praxis nach den Bedingungen der Versicherung nicht berechnen darf.',
  caution:
    'Dies ist eine Schätzung und keine Zusage. Was bezahlt wird und was berechnet werden darf, ' +
    'entscheiden das örtliche Recht und die Bedingungen der Versicherung.',
  changes: 'Befunde während der Behandlung können sie ändern. Dies ist keine Rechnung.',
  day: 'Datum',
  signature: 'Unterschrift',
  page: (number, of) => `Seite ${number} von ${of}`,
};

export const ESTIMATE_WORDS: Readonly<Record<Language, EstimateWords>> = { en: EN, de: DE };

const LOCALES: Readonly<Record<Language, string>> = { en: 'en-GB', de: 'de-DE' };

/** 25 November 2026, in German 25. November 2026. */
export function dayText(day: string, language: Language): string {
  const format = new Intl.DateTimeFormat(LOCALES[language], { dateStyle: 'long', timeZone: 'UTC' });
  return format.format(new Date(`${day}T00:00:00Z`));
}

/** 1,234.50, in German 1.234,50; a decimal stays one and is never made a float. */
export function amountText(decimal: string, digits: number, language: Language): string {
  const format = new Intl.NumberFormat(LOCALES[language], {
    minimumFractionDigits: digits,
    maximumFractionDigits: digits,
  });
  return format.format(decimal as Intl.StringNumericLiteral);
}
