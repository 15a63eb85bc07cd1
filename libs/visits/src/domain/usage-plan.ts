import type { IsoTooth } from '#lib/dentition';
import { isWholeUnit, max, min, type Quantity, quantity, ZERO_QUANTITY } from '#lib/measure';
import type { FieldError } from '#lib/platform';
import type { Driver, PlannedLine } from '#lib/procedures';

/** What the person at the chair says about one line; what is left out stays as planned. */
export interface UsageEntry {
  readonly line?: string | null;
  readonly restoration?: number | null;
  readonly attempt?: number | null;
  readonly consumableId?: string | null;
  readonly placed?: string | null;
  readonly dispensed?: string | null;
}

/** One usage line before stock and cost are known. */
export interface UsageDraft {
  /** Key of the planned line; null when it was added by hand. */
  readonly key: string | null;
  readonly restoration: number | null;
  readonly tooth: IsoTooth | null;
  readonly attempt: number;
  readonly consumableId: string;
  readonly driver: Driver | null;
  readonly planned: Quantity;
  readonly placed: Quantity;
  readonly dispensed: Quantity;
  /** It takes its part of single doses that other such lines of the visit use too. */
  readonly sharesDose: boolean;
}

interface Context {
  readonly restorations: readonly { readonly attempts: number }[];
  readonly unitOf: (consumableId: string) => string | undefined;
}

type Result =
  | { readonly ok: true; readonly lines: readonly UsageDraft[] }
  | { readonly ok: false; readonly error: FieldError };

/** Puts what was really used over what the templates planned. The first wrong entry is answered. */
export function applyUsage(
  planned: readonly PlannedLine[],
  entries: readonly UsageEntry[],
  context: Context,
): Result {
  const lines = new Map<string, UsageDraft>(planned.map((line) => [line.key, draftOf(line)]));
  const touched = new Set<string>();
  const added: UsageDraft[] = [];
  // What is added joins the doses that are open already.
  const sharing = new Set(planned.filter((line) => line.sharesDose).map((l) => l.consumableId));
  for (const [i, entry] of entries.entries()) {
    const wrong = (field: string, message: string) =>
      ({ ok: false, error: { field: `usage[${i}].${field}`, message } }) as const;
    if (isLeftOut(entry.line)) {
      const draft = addLine(entry, context);
      if ('field' in draft) return wrong(draft.field, draft.message);
      added.push({ ...draft, sharesDose: sharing.has(draft.consumableId) });
      continue;
    }
    const line = lines.get(entry.line);
    if (!line) return wrong('line', 'names no line that the templates plan for this visit');
    if (touched.has(entry.line)) return wrong('line', 'was given before');
    if (!isLeftOut(entry.restoration)) return wrong('restoration', 'belongs to an added line');
    if (!isLeftOut(entry.attempt)) return wrong('attempt', 'belongs to an added line');
    touched.add(entry.line);
    const changed = changeLine(line, entry, context);
    if ('field' in changed) return wrong(changed.field, changed.message);
    lines.set(entry.line, changed);
  }
  return { ok: true, lines: [...lines.values(), ...added] };
}

function draftOf(line: PlannedLine): UsageDraft {
  return { ...line, planned: line.dispensed };
}

/** A smaller amount out of the container also means that no more than that was placed. */
function changeLine(
  line: UsageDraft,
  entry: UsageEntry,
  context: Context,
): UsageDraft | FieldError {
  const said = { placed: read(entry.placed), dispensed: read(entry.dispensed) };
  const dispensed = said.dispensed ?? max(line.dispensed, said.placed ?? ZERO_QUANTITY);
  const placed = said.placed ?? min(line.placed, dispensed);
  const consumableId = entry.consumableId ?? line.consumableId;
  return checked({ ...line, consumableId, placed, dispensed }, context);
}

function addLine(entry: UsageEntry, context: Context): UsageDraft | FieldError {
  const { consumableId } = entry;
  const restoration = entry.restoration ?? null;
  const attempt = entry.attempt ?? 1;
  if (isLeftOut(consumableId)) return { field: 'consumableId', message: 'says what was used' };
  const of = restoration === null ? undefined : context.restorations[restoration];
  if (restoration !== null && !of) {
    return { field: 'restoration', message: 'names no restoration of this visit (0 is the first)' };
  }
  if (attempt > (of?.attempts ?? 1)) {
    return { field: 'attempt', message: 'is more than the restoration had attempts' };
  }
  const placed = read(entry.placed);
  const dispensed = read(entry.dispensed) ?? placed;
  if (dispensed === undefined || dispensed === 0n) {
    return { field: 'dispensed', message: 'says how much was used, more than 0' };
  }
  const line: UsageDraft = {
    key: null,
    restoration,
    tooth: null,
    attempt,
    consumableId,
    driver: null,
    planned: ZERO_QUANTITY,
    placed: placed ?? ZERO_QUANTITY,
    dispensed,
    sharesDose: false,
  };
  return checked(line, context);
}

function checked(line: UsageDraft, context: Context): UsageDraft | FieldError {
  const unit = context.unitOf(line.consumableId);
  if (unit === undefined) {
    return { field: 'consumableId', message: 'names no consumable of this practice' };
  }
  if (line.placed > line.dispensed) {
    return { field: 'placed', message: 'must not be more than what was dispensed' };
  }
  for (const field of ['dispensed', 'placed'] as const) {
    if (isWholeUnit(unit) && line[field] % 1_000_000n !== 0n) {
      return { field, message: `must be a whole number of ${unit === 'use' ? 'uses' : 'pieces'}` };
    }
  }
  return line;
}

function isLeftOut(value: unknown): value is undefined | null {
  return value === undefined || value === null;
}

function read(text: string | null | undefined): Quantity | undefined {
  return isLeftOut(text) ? undefined : quantity(text);
}
