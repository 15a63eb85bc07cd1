import { type IsoTooth, regionOf } from '#lib/dentition';
import {
  type Amount,
  amountsOf,
  greater,
  type IsWhole,
  NOTHING,
  plus,
  rounded,
  scaled,
  times,
} from './amounts.js';
import {
  isVisitDriver,
  type PlannedLine,
  type PlannedRestoration,
  type TemplateLine,
  type VisitDriver,
} from './template.js';

export interface UsageInput {
  readonly restorations: readonly PlannedRestoration[];
  /** People at the chair. */
  readonly staffCount: number;
  /** Leaves out the lines that are there for anaesthesia. */
  readonly withoutAnaesthetic?: boolean;
  /** Whether the consumable is counted, so that only whole units of it are used. */
  isWhole(consumableId: string): boolean;
}

/**
 * What a visit is planned to use, from the templates of its restorations: first the lines of the
 * visit, then those of its teeth, then those of its restorations. Each line's quantity is the
 * template's amount times the count of its driver.
 *
 * Two restorations that name the same thing for the visit, a region or a tooth use it once: the
 * greater amount counts. From the second attempt on, whatever that attempt uses again belongs to
 * the restoration that is done again.
 */
export function expandUsage(input: UsageInput): readonly PlannedLine[] {
  const isWhole: IsWhole = (consumableId) => input.isWhole(consumableId);
  const own = input.restorations.flatMap((restoration, index) =>
    ownLines(restoration, index, input, isWhole),
  );
  const lines = [...visitLines(input, isWhole), ...toothLines(input, isWhole), ...own];
  return lines.filter((line) => line.dispensed > 0n);
}

/** The lines of a template that count for this restoration, in their order. */
function linesFor(restoration: PlannedRestoration, input: UsageInput): TemplateLine[] {
  return restoration.template.lines
    .filter((line) => line.reasons === null || line.reasons.includes(restoration.reason))
    .filter((line) => !line.anaesthetic || input.withoutAnaesthetic !== true)
    .sort((a, b) => a.lineNumber - b.lineNumber);
}

interface VisitShare {
  readonly driver: VisitDriver;
  readonly consumableId: string;
  /** The amount per visit or person; by region for what each region uses. */
  readonly byPlace: Map<string, Amount>;
}

function visitLines(input: UsageInput, isWhole: IsWhole): PlannedLine[] {
  const shares = new Map<string, VisitShare>();
  for (const restoration of input.restorations) {
    for (const { driver, consumableId, amount } of visitAmounts(restoration, input, isWhole)) {
      const key = `visit/${driver}/${consumableId}`;
      const place = driver === 'front segment or quadrant' ? regionOf(restoration.tooth) : '';
      const share = shares.get(key) ?? { driver, consumableId, byPlace: new Map<string, Amount>() };
      share.byPlace.set(place, greater(share.byPlace.get(place) ?? NOTHING, amount));
      shares.set(key, share);
    }
  }
  return [...shares].map(([key, { driver, consumableId, byPlace }]) => {
    const once = [...byPlace.values()].reduce(plus, NOTHING);
    const amount = driver === 'staff member' ? scaled(once, times(input.staffCount)) : once;
    const shared = { restoration: null, tooth: null, attempt: 1, consumableId, driver };
    return { key, ...shared, sharesDose: false, ...rounded(amount, isWhole(consumableId)) };
  });
}

interface VisitAmount {
  readonly driver: VisitDriver;
  readonly consumableId: string;
  readonly amount: Amount;
}

/** What one restoration asks of the visit: lines of its template that name the same are added. */
function visitAmounts(
  restoration: PlannedRestoration,
  input: UsageInput,
  isWhole: IsWhole,
): VisitAmount[] {
  const amounts = new Map<string, VisitAmount>();
  for (const line of linesFor(restoration, input)) {
    const { driver } = line;
    if (!isVisitDriver(driver)) continue;
    for (const { consumableId, ...used } of amountsOf(line, restoration, isWhole)) {
      const key = `${driver}/${consumableId}`;
      const amount = plus(amounts.get(key)?.amount ?? NOTHING, used);
      amounts.set(key, { driver, consumableId, amount });
    }
  }
  return [...amounts.values()];
}

function toothLines(input: UsageInput, isWhole: IsWhole): PlannedLine[] {
  const teeth = new Map<IsoTooth, Map<string, ToothAmount>>();
  for (const restoration of input.restorations) {
    const { tooth } = restoration;
    const ofTooth = teeth.get(tooth) ?? new Map<string, ToothAmount>();
    for (const [consumableId, used] of toothAmounts(restoration, input, isWhole)) {
      const before = ofTooth.get(consumableId) ?? NOT_USED;
      const sharesDose = before.sharesDose || used.sharesDose;
      ofTooth.set(consumableId, { ...greater(before, used), sharesDose });
    }
    teeth.set(tooth, ofTooth);
  }
  return [...teeth].flatMap(([tooth, amounts]) =>
    [...amounts].map(([consumableId, { sharesDose, ...amount }]): PlannedLine => {
      const key = `tooth/${tooth}/tooth/${consumableId}`;
      const shared = {
        restoration: null,
        tooth,
        attempt: 1,
        consumableId,
        driver: 'tooth',
        sharesDose,
      } as const;
      return { key, ...shared, ...rounded(amount, isWhole(consumableId)) };
    }),
  );
}

interface ToothAmount extends Amount {
  readonly sharesDose: boolean;
}

const NOT_USED: ToothAmount = { ...NOTHING, sharesDose: false };

function toothAmounts(
  restoration: PlannedRestoration,
  input: UsageInput,
  isWhole: IsWhole,
): Map<string, ToothAmount> {
  const amounts = new Map<string, ToothAmount>();
  for (const line of linesFor(restoration, input)) {
    if (line.driver !== 'tooth') continue;
    for (const { consumableId, ...used } of amountsOf(line, restoration, isWhole)) {
      const before = amounts.get(consumableId) ?? NOT_USED;
      const sharesDose = before.sharesDose || line.sharesDose;
      amounts.set(consumableId, { ...plus(before, used), sharesDose });
    }
  }
  return amounts;
}

function ownLines(
  restoration: PlannedRestoration,
  index: number,
  input: UsageInput,
  isWhole: IsWhole,
): PlannedLine[] {
  const lines = linesFor(restoration, input);
  const planned: PlannedLine[] = [];
  for (let attempt = 1; attempt <= restoration.attempts; attempt += 1) {
    for (const line of lines) {
      if (!usedInAttempt(line, attempt)) continue;
      const people = line.driver === 'staff member' ? input.staffCount : 1;
      for (const { consumableId, ...amount } of amountsOf(line, restoration, isWhole)) {
        planned.push({
          key: `r${index + 1}/a${attempt}/${line.lineNumber}/${consumableId}`,
          restoration: index,
          tooth: null,
          attempt,
          consumableId,
          driver: line.driver,
          sharesDose: line.sharesDose,
          ...rounded(scaled(amount, times(people)), isWhole(consumableId)),
        });
      }
    }
  }
  return planned;
}

/** Whether this attempt at a restoration uses the line as the restoration's own. */
function usedInAttempt(line: TemplateLine, attempt: number): boolean {
  if (attempt > 1) return line.everyAttempt || line.driver === 'attempt';
  return !isVisitDriver(line.driver) && line.driver !== 'tooth';
}
