import { formatSurfaces, formatTooth, type ToothNotation } from '#lib/dentition';
import type { Shape } from '../../api/client.js';
import { asDecimal } from '../../ui/decimal-text.js';
import { placeOf, type Row } from './row.js';
import { readRows, writeRows } from './row-words.js';

export type QuoteQuestion = Shape<'QuoteQuestionDto'>;

/** The question as it is typed; names are the field paths of the service. */
export interface Draft {
  readonly restorations: readonly Row[];
  readonly chartReference: string;
  readonly planId: string;
  readonly 'balance.deductibleLeft': string;
  readonly 'balance.maximumLeft': string;
  readonly quotedOn: string;
  readonly targetContributionPerHour: string;
  readonly setUpMinutes: string;
  readonly chairMinuteCost: string;
}

/** The same in the address. */
export interface QuestionWords {
  readonly r?: string | undefined;
  readonly chart?: string | undefined;
  readonly plan?: string | undefined;
  readonly ded?: string | undefined;
  readonly max?: string | undefined;
  readonly day?: string | undefined;
  readonly target?: string | undefined;
  readonly setup?: string | undefined;
  readonly rate?: string | undefined;
}

const said = (typed: string): string | undefined => {
  const text = typed.trim();
  return text === '' ? undefined : (asDecimal(text) ?? text);
};

export function wordsOf(draft: Draft, notation: ToothNotation): QuestionWords {
  const withPlan = draft.planId !== '';
  return {
    r: writeRows(draft.restorations, notation) || undefined,
    chart: draft.chartReference.trim() || undefined,
    plan: draft.planId || undefined,
    ded: withPlan ? said(draft['balance.deductibleLeft']) : undefined,
    max: withPlan ? said(draft['balance.maximumLeft']) : undefined,
    day: draft.quotedOn || undefined,
    target: said(draft.targetContributionPerHour),
    setup: draft.setUpMinutes.trim() || undefined,
    rate: said(draft.chairMinuteCost),
  };
}

export function draftOf(words: QuestionWords, notation: ToothNotation): Draft {
  return {
    restorations: readRows(words.r, notation),
    chartReference: words.chart ?? '',
    planId: words.plan ?? '',
    'balance.deductibleLeft': words.ded ?? '',
    'balance.maximumLeft': words.max ?? '',
    quotedOn: words.day ?? '',
    targetContributionPerHour: words.target ?? '',
    setUpMinutes: words.setup ?? '',
    chairMinuteCost: words.rate ?? '',
  };
}

const orNull = (text: string | undefined) => text ?? null;

/** What the service is asked; undefined while there is no restoration. */
export function requestOf(draft: Draft, notation: ToothNotation): QuoteQuestion | undefined {
  if (draft.restorations.length === 0) return undefined;
  const deductibleLeft = said(draft['balance.deductibleLeft']);
  const maximumLeft = said(draft['balance.maximumLeft']);
  const stated = draft.planId !== '' && (deductibleLeft ?? maximumLeft) !== undefined;
  const setUp = draft.setUpMinutes.trim();
  return {
    chartReference: draft.chartReference.trim() || null,
    planId: draft.planId || null,
    balance: stated
      ? { deductibleLeft: deductibleLeft ?? '', maximumLeft: orNull(maximumLeft) }
      : null,
    quotedOn: draft.quotedOn || null,
    targetContributionPerHour: orNull(said(draft.targetContributionPerHour)),
    setUpMinutes: setUp === '' ? null : Number(setUp),
    chairMinuteCost: orNull(said(draft.chairMinuteCost)),
    toothNotation: notation,
    restorations: draft.restorations.map((row) => restorationOf(row, notation)),
  };
}

function restorationOf(row: Row, notation: ToothNotation): Shape<'QuotedRestorationDto'> {
  const { tooth, surfaces } = placeOf(row, notation);
  const minutes = row.minutes.trim();
  return {
    tooth: tooth === undefined ? row.tooth : formatTooth(tooth, notation),
    surfaces: surfaces === undefined ? row.surfaces : formatSurfaces(surfaces),
    cavityClass: row.cavityClass === '' ? null : row.cavityClass,
    size: row.size,
    reason: row.reason,
    templateId: row.templateId,
    shades: [...row.shades],
    fee: orNull(said(row.fee)),
    minutes: minutes === '' ? null : Number(minutes),
    withoutAnaesthetic: row.withoutAnaesthetic,
    attempts: 1 + Number(row.retakes.trim()),
    lengthMm: orNull(said(row.lengthMm)),
    widthMm: orNull(said(row.widthMm)),
    depthMm: orNull(said(row.depthMm)),
  };
}
