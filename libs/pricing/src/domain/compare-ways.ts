import type { Reason } from '#lib/dentition';
import {
  type Money,
  moneyFromMicro,
  multiplyRatio,
  roundTo,
  splitLargestRemainder,
  subtract,
  sum,
} from '#lib/measure';
import { type LowestFee, lowestFee } from './lowest-fee.js';
import {
  type Balance,
  type Charge,
  incomeLimit,
  type PlanSettings,
  type PlanShare,
  planShares,
  withoutPlan,
} from './plan-share.js';
import { type Range, resample } from './resample.js';
import {
  type MaterialInput,
  type Repeated,
  repeatedUse,
  type WayMaterial,
  wayMaterial,
} from './way-material.js';
import { type Way, type WayKind, waysOf } from './ways.js';

export interface QuoteInput extends MaterialInput {
  /** One for each restoration. */
  readonly charges: readonly Charge[];
  readonly plan: { readonly settings: PlanSettings; readonly balance: Balance } | null;
  /** Getting ready and clearing away, once for every visit; null: not known, so not counted. */
  readonly setUpMinutes: number | null;
  /** What the capacity of one chair minute costs; null: not known. */
  readonly chairMinuteCost: Money | null;
  /** What a minute of an assistant costs; null: not known, so not counted. */
  readonly assistantMinuteCost: Money | null;
  readonly targetPerHour: Money | null;
  /** What the restorations' own use cost in earlier visits, one list for each restoration. */
  readonly recordedOwn: readonly (readonly Money[])[];
}

export interface QuotedLine {
  readonly position: number;
  readonly visit: number;
  readonly reason: Reason;
  readonly fee: Money;
  readonly material: Money;
  /** What it would use in a visit of its own: what sharing a visit and a tooth saves it. */
  readonly materialAlone: Money;
  readonly minutes: number;
  readonly share: PlanShare;
  /** Undefined when no target was given. */
  readonly lowestFee: LowestFee | undefined;
  /** The most that plan and patient may be asked together; null: no limit. */
  readonly incomeLimit: Money | null;
}

export interface QuotedVisit {
  readonly positions: readonly number[];
  readonly minutes: number;
  readonly material: Money;
}

export interface QuotedWay {
  readonly kind: WayKind;
  readonly visits: readonly QuotedVisit[];
  readonly lines: readonly QuotedLine[];
  readonly fee: Money;
  readonly planPays: Money;
  readonly patientPays: Money;
  readonly writeOff: Money;
  readonly material: Money;
  readonly minutes: number;
  readonly chairCost: Money | null;
  /** Of the restorations; set-up is counted with the chair. */
  readonly assistantMinutes: number;
  readonly assistantCost: Money | null;
  /** What plan and patient pay, less material. */
  readonly contribution: Money;
  readonly contributionPerHour: Money | null;
  /** Contribution less the time of chair and assistants. */
  readonly afterChairTime: Money | null;
  /** What plan and patient would have to pay for the wished contribution; undefined: no target. */
  readonly neededIncome: Money | undefined;
  readonly materialRange: Range | null;
  readonly contributionRange: Range | null;
  /** What this way uses beyond doing it all in one visit. */
  readonly repeated: readonly Repeated[];
  readonly repeatedMinutes: number | null;
}

/** The seed is fixed: the same question gets the same answer. */
const SEED = 20_260_101;
const MICRO_MINUTE = 1_000_000n;

/** Every way of doing the work, side by side. */
export function compareWays(input: QuoteInput): QuotedWay[] {
  const [together, ...others] = waysOf(input.restorations.map((r) => r.reason));
  if (!together) return [];
  const first = wayMaterial(together, input);
  const alone = input.restorations.map((_, i) => wayMaterial({ visits: [[i]] }, input).total);
  const ways = others.map((way) => {
    const material = wayMaterial(way, input);
    const whole = way.visits.flat().length === input.restorations.length;
    const repeated = whole ? repeatedUse(material, first, input.step) : [];
    return quoteWay(way, input, { ...material, alone, repeated });
  });
  return [quoteWay(together, input, { ...first, alone, repeated: [] }), ...ways];
}

interface MaterialOfWay extends WayMaterial {
  /** Of each restoration in a visit of its own, by position in the list. */
  readonly alone: readonly Money[];
  readonly repeated: readonly Repeated[];
}

function quoteWay(way: Way, input: QuoteInput, material: MaterialOfWay): QuotedWay {
  const lines = quoteLines(way, input, material);
  const visits = way.visits.map((positions) => quoteVisit(positions, input, lines));
  const totals = totalsOf(lines);
  const minutes = visits.reduce((total, visit) => total + visit.minutes, 0);
  const income = moneyFromMicro(totals.planPays + totals.patientPays);
  const contribution = subtract(income, material.total);
  const chairCost = timeCost(minutes, input.chairMinuteCost, input.step);
  const assistantMinutes = assistantMinutesOf(way, input);
  const assistantCost = timeCost(assistantMinutes, input.assistantMinuteCost, input.step);
  const materialRange = rangeOf(lines, input, material.shared);
  return {
    kind: way.kind,
    visits,
    lines,
    ...totals,
    material: material.total,
    minutes,
    chairCost,
    assistantMinutes,
    assistantCost,
    contribution,
    contributionPerHour: perHour(contribution, minutes, input.step),
    afterChairTime:
      chairCost === null
        ? null
        : subtract(contribution, moneyFromMicro(chairCost + (assistantCost ?? 0n))),
    neededIncome: neededIncome(material.total, minutes, input),
    materialRange,
    contributionRange: materialRange && {
      p10: subtract(income, materialRange.p90),
      p50: subtract(income, materialRange.p50),
      p90: subtract(income, materialRange.p10),
    },
    repeated: material.repeated,
    repeatedMinutes:
      input.setUpMinutes === null ? null : input.setUpMinutes * (way.visits.length - 1),
  };
}

function totalsOf(lines: readonly QuotedLine[]) {
  return {
    fee: sum(lines.map((line) => line.fee)),
    planPays: sum(lines.map((line) => line.share.planPays)),
    patientPays: sum(lines.map((line) => line.share.patientPays)),
    writeOff: sum(lines.map((line) => line.share.writeOff)),
  };
}

function quoteLines(way: Way, input: QuoteInput, material: MaterialOfWay): QuotedLine[] {
  const placed = way.visits.flatMap((positions, visit) => {
    const setUp = splitSetUp(positions.length, input.setUpMinutes);
    return positions.map((position, at) => ({ position, visit, setUp: setUp[at] ?? 0n }));
  });
  const charges = placed.map(({ position }) => found(input.charges[position]));
  const { plan, step } = input;
  const paid = plan && planShares(charges, plan.settings, plan.balance, step);
  return placed.map(({ position, visit, setUp }, i) => {
    const { reason, minutes } = found(input.restorations[position]);
    const charge = found(charges[i]);
    const limit = plan && paid && incomeLimit(charge, plan.settings, found(paid.before[i]), step);
    const cost = found(material.byRestoration.get(position));
    const wanted = { material: cost, time: BigInt(minutes) * MICRO_MINUTE + setUp, limit, step };
    const perHour = input.targetPerHour;
    return {
      position,
      visit,
      reason,
      fee: charge.fee,
      material: cost,
      materialAlone: found(material.alone[position]),
      minutes,
      share: paid?.shares[i] ?? withoutPlan(charge.fee),
      lowestFee: perHour === null ? undefined : lowestFee({ ...wanted, perHour }),
      incomeLimit: limit,
    };
  });
}

/** The restorations of a visit bear its set-up time equally. */
function splitSetUp(count: number, minutes: number | null): bigint[] {
  const equal = new Array<bigint>(count).fill(1n);
  return splitLargestRemainder(BigInt(minutes ?? 0) * MICRO_MINUTE, equal);
}

function quoteVisit(
  positions: readonly number[],
  input: QuoteInput,
  lines: readonly QuotedLine[],
): QuotedVisit {
  const own = lines.filter((line) => positions.includes(line.position));
  const work = own.reduce((total, line) => total + line.minutes, 0);
  return {
    positions,
    minutes: work + (input.setUpMinutes ?? 0),
    material: sum(own.map((line) => line.material)),
  };
}

function assistantMinutesOf(way: Way, { restorations }: QuoteInput): number {
  const positions = way.visits.flat();
  return positions.reduce((total, i) => total + found(restorations[i]).assistantMinutes, 0);
}

function timeCost(minutes: number, minuteCost: Money | null, step: bigint): Money | null {
  if (minuteCost === null) return null;
  return moneyFromMicro(roundTo(minuteCost * BigInt(minutes), step, 'half-up'));
}

function perHour(amount: Money, minutes: number, step: bigint): Money | null {
  if (minutes === 0) return null;
  return moneyFromMicro(multiplyRatio(amount, 60n, BigInt(minutes) * step, 'half-up') * step);
}

function neededIncome(
  material: Money,
  minutes: number,
  { targetPerHour, step }: QuoteInput,
): Money | undefined {
  if (targetPerHour === null) return undefined;
  const time = BigInt(minutes) * MICRO_MINUTE;
  return (
    lowestFee({ material, time, perHour: targetPerHour, limit: null, step }) ?? moneyFromMicro(0n)
  );
}

/** What the restorations use themselves varies as recorded; what visits share is as planned. */
function rangeOf(lines: readonly QuotedLine[], input: QuoteInput, shared: Money): Range | null {
  const recorded = lines.map(({ position }) => input.recordedOwn[position] ?? []);
  const range = resample(recorded, SEED);
  if (!range) return null;
  const plus = (amount: Money) => moneyFromMicro(amount + shared);
  return { p10: plus(range.p10), p50: plus(range.p50), p90: plus(range.p90) };
}

function found<T>(value: T | undefined): T {
  if (value === undefined) throw new RangeError('A quote needs a charge for every restoration.');
  return value;
}
