import type { Reason } from '#lib/dentition';
import { isWholeUnit, parseDecimal, quantity } from '#lib/measure';
import type { Shape } from '../../api/client.js';
import type { Text } from '../../text/text.js';
import { asDecimal } from '../../ui/decimal-text.js';
import type { FieldErrors } from '../../ui/use-form.js';
import type { Driver, Template, TemplateLine } from './api/get-template.js';
import { DRIVERS, isSharedByVisit } from './drivers.js';

/** The shades that are chosen for a restoration, in place of a consumable. */
export const SHADES = 'shades';

/** A line as it stands in the editor. */
export interface DraftLine {
  /** Names the line for as long as the editor is open. */
  readonly key: string;
  /** A consumable, SHADES, or '' for nothing yet. */
  readonly what: string;
  readonly name: string;
  readonly unit: string | null;
  readonly driver: Driver;
  readonly dispensed: string;
  /** '' is nothing. */
  readonly placed: string;
  readonly everyAttempt: boolean;
  /** Empty is every reason. */
  readonly reasons: readonly Reason[];
  readonly sharesDose: Flag;
  readonly anaesthetic: Flag;
}

/** null: as is usual for the category of the consumable. */
export type Flag = boolean | null;

export interface Draft {
  readonly name: string;
  readonly minutes: string;
  /** '' is as long as the chair time. */
  readonly assistantMinutes: string;
  readonly layerThicknessMm: string;
  readonly note: string;
  /** In the order in which the service gets them: by driver, then as arranged. */
  readonly lines: readonly DraftLine[];
}

/** How a decimal of the service is typed here: '0.06' or '0,06'. */
export type Typed = (decimal: string) => string;

let made = 0;

export function newLine(driver: Driver): DraftLine {
  made += 1;
  return {
    key: `line-${made}`,
    what: '',
    name: '',
    unit: null,
    driver,
    dispensed: '',
    placed: '',
    everyAttempt: false,
    reasons: [],
    sharesDose: null,
    anaesthetic: null,
  };
}

export const EMPTY_DRAFT: Draft = {
  name: '',
  minutes: '30',
  assistantMinutes: '',
  layerThicknessMm: '2',
  note: '',
  lines: [],
};

function toDraftLine(line: TemplateLine, typed: Typed): DraftLine {
  return {
    ...newLine(line.driver),
    what: line.consumableId ?? SHADES,
    name: line.consumableName ?? '',
    unit: line.stockUnit,
    dispensed: typed(line.dispensed),
    placed: line.placed === '0' ? '' : typed(line.placed),
    everyAttempt: line.everyAttempt,
    reasons: (line.reasons ?? []) as Reason[],
    sharesDose: line.sharesDose,
    anaesthetic: line.anaesthetic,
  };
}

/** The version as the editor shows it; the note is for the next one. */
export function draftOf(template: Template, typed: Typed): Draft {
  return {
    name: template.name,
    minutes: String(template.minutes),
    assistantMinutes:
      template.assistantMinutes === template.minutes ? '' : String(template.assistantMinutes),
    layerThicknessMm: typed(template.layerThicknessMm),
    note: '',
    lines: inOrder(template.lines.map((line) => toDraftLine(line, typed))),
  };
}

/** By driver; within a driver as they stand. */
export function inOrder(lines: readonly DraftLine[]): DraftLine[] {
  return DRIVERS.flatMap((driver) => lines.filter((line) => line.driver === driver));
}

/** One place up or down among the lines of the same driver. */
export function moved(lines: readonly DraftLine[], key: string, by: 1 | -1): readonly DraftLine[] {
  const from = lines.findIndex((line) => line.key === key);
  const [line, other] = [lines[from], lines[from + by]];
  if (!line || other?.driver !== line.driver) return lines;
  const next = [...lines];
  next[from] = other;
  next[from + by] = line;
  return next;
}

/** What the visit uses once, and what is counted in whole pieces, has no part of a dose. */
export function mayShareDose({ driver, unit }: Pick<DraftLine, 'driver' | 'unit'>): boolean {
  return !isSharedByVisit(driver) && (unit === null || !isWholeUnit(unit));
}

export function linesBody(lines: readonly DraftLine[]): Shape<'NewVersionDto'>['lines'] {
  return lines.map((line) => ({
    consumableId: line.what === SHADES ? null : line.what,
    driver: line.driver,
    placed: asDecimal(line.placed) ?? '0',
    dispensed: asDecimal(line.dispensed) ?? '0',
    everyAttempt: line.everyAttempt,
    reasons: line.reasons.length === 0 ? null : [...line.reasons],
    sharesDose: mayShareDose(line) ? line.sharesDose : null,
    anaesthetic: line.anaesthetic,
  }));
}

/** null: as long as the chair time. */
export function assistantMinutesOf({ assistantMinutes }: Draft): number | null {
  return assistantMinutes.trim() === '' ? null : Number(assistantMinutes);
}

export function versionBody(draft: Draft): Shape<'NewVersionDto'> {
  const note = draft.note.trim();
  return {
    minutes: Number(draft.minutes),
    assistantMinutes: assistantMinutesOf(draft),
    layerThicknessMm: asDecimal(draft.layerThicknessMm) ?? null,
    note: note === '' ? null : note,
    lines: linesBody(draft.lines),
  };
}

/** What is wrong about the lines and figures; whether a name or a note is needed is the screen's. */
export function draftErrors(draft: Draft, t: Text): FieldErrors {
  const errors: Record<string, string | undefined> = {};
  for (const field of ['minutes', 'assistantMinutes'] as const) {
    const typed = draft[field].trim();
    if (field === 'assistantMinutes' && typed === '') continue;
    if (/^\d{1,4}$/.test(typed) && Number(typed) <= 1440) continue;
    errors[field] = t.setup.wholeBetween(0, 1440);
  }
  errors.layerThicknessMm = positive(draft.layerThicknessMm, t);
  if (draft.lines.length === 0) errors.lines = t.setupTemplates.noLines;
  draft.lines.forEach((line, i) => {
    for (const [field, words] of Object.entries(lineErrors(line, t))) {
      errors[`lines[${i}].${field}`] = words;
    }
  });
  return errors;
}

/** What can be said about lines while they are typed: nothing about what is still empty. */
export function liveLineErrors(lines: readonly DraftLine[], t: Text): FieldErrors {
  const errors: Record<string, string | undefined> = {};
  lines.forEach((line, i) => {
    const wrong = lineErrors(line, t);
    errors[`lines[${i}].driver`] = wrong.driver;
    if (line.dispensed.trim() === '') return;
    errors[`lines[${i}].dispensed`] = wrong.dispensed;
    errors[`lines[${i}].placed`] = wrong.placed;
  });
  return errors;
}

function positive(typed: string, t: Text): string | undefined {
  if (typed.trim() === '') return t.ui.required;
  const decimal = asDecimal(typed);
  if (decimal === undefined) return t.ui.decimal;
  return quantity(decimal) > 0n ? undefined : t.setup.aboveZero;
}

function lineErrors(line: DraftLine, t: Text): FieldErrors {
  const w = t.setupTemplates;
  const whole = line.unit !== null && isWholeUnit(line.unit);
  const fraction = (typed: string) => whole && !parseDecimal(asDecimal(typed) ?? '', 0).ok;
  const placed = line.placed.trim() === '' ? '0' : asDecimal(line.placed);
  const dispensed = positive(line.dispensed, t);
  const out = asDecimal(line.dispensed) ?? '0';
  const tooMuch = placed !== undefined && quantity(placed) > quantity(out);
  return {
    consumableId: line.what === '' ? t.ui.choose : undefined,
    driver: line.what === SHADES && isSharedByVisit(line.driver) ? w.shadesDriver : undefined,
    dispensed: dispensed ?? (fraction(line.dispensed) ? w.wholeOnly : undefined),
    placed:
      placed === undefined || placed.startsWith('-')
        ? t.ui.decimal
        : dispensed === undefined && tooMuch
          ? w.placedTooMuch
          : placed !== '0' && fraction(line.placed)
            ? w.wholeOnly
            : undefined,
  };
}
