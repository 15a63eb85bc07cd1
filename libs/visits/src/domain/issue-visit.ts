import { effectiveExpiry } from '#lib/catalogue';
import {
  type Money,
  moneyFromMicro,
  multiplyQuantity,
  type Quantity,
  quantityFromMicro,
  ZERO_QUANTITY,
} from '#lib/measure';
import type { IsoDate } from '#lib/platform';
import { blockedOn, type Candidate, chooseStock, type IssuePlan, type Take } from '#lib/stock';
import { divide, type Part } from './share-dose.js';
import type { UsageDraft } from './usage-plan.js';

/** What of a consumable matters when it is issued and costed. */
export interface IssuedConsumable {
  readonly life_after_opening: number | null;
  readonly life_after_opening_unit: 'day' | 'month' | null;
  readonly unitCost: Money | null;
  readonly dose: Quantity | null;
}

export interface IssueInput {
  readonly lines: readonly UsageDraft[];
  readonly candidates: readonly Candidate[];
  readonly day: IsoDate;
  readonly locationId: string;
  readonly scanned: readonly { readonly lotId: string; readonly holdingId?: string | null }[];
  readonly lots: ReadonlyMap<string, { readonly consumable_id: string }>;
  readonly consumableOf: (id: string) => IssuedConsumable;
  readonly newId: () => string;
}

export interface Missing {
  readonly quantity: Quantity;
  readonly unitCost: Money;
  readonly costKnown: boolean;
  /** The lot that was scanned though the book has none of it left. */
  readonly lotId: string | null;
}

export interface IssuedLine {
  readonly draft: UsageDraft;
  readonly takes: readonly Take[];
  readonly missing: Missing | null;
  readonly charged: Quantity;
  readonly cost: Money;
}

export interface IssuedVisit {
  readonly lines: readonly IssuedLine[];
  readonly plan: IssuePlan;
}

/** Serves the usage lines from stock; what the book does not have becomes a priced shortfall. */
export function issueVisit(input: IssueInput): IssuedVisit {
  const lotWithout = lotsWithoutStock(input);
  const groups = groupsOf(input);
  const needs = groups.map(({ consumableId, lines }) => ({
    consumableId,
    // Another lot than the one that was scanned must not be put in its place.
    quantity: lotWithout.has(consumableId) ? ZERO_QUANTITY : dispensedBy(lines),
  }));
  const plan = chooseStock(input.candidates, {
    day: input.day,
    locationId: input.locationId,
    needs,
    scanned: new Set(input.scanned.map((s) => s.holdingId ?? s.lotId)),
    ifOpenedUseBy: (candidate, day) =>
      afterOpeningUseBy(candidate, day, input.consumableOf(candidate.consumableId)),
    newId: input.newId,
  });
  const parts = new Map<UsageDraft, Part>();
  groups.forEach(({ consumableId, lines }, at) => {
    const missing = lotWithout.has(consumableId) ? dispensedBy(lines) : plan.missing[at];
    const whole = wholeDoses(missing ?? 0n, input.consumableOf(consumableId).dose);
    const takes = plan.takes.filter((take) => take.need === at);
    const sharers = lines.map(({ dispensed, placed }) => ({ amount: dispensed, placed }));
    divide(sharers, takes, whole).forEach((part, i) => {
      const line = lines[i];
      if (line) parts.set(line, part);
    });
  });
  const lines = input.lines.map((draft, i) => {
    const lotId = lotWithout.get(draft.consumableId) ?? null;
    const { takes = [], missing = ZERO_QUANTITY } = parts.get(draft) ?? {};
    const own = takes.map((take) => ({ ...take, need: i }));
    return issuedLine(draft, own, missing, lotId, input);
  });
  return { lines, plan: { ...plan, takes: lines.flatMap((line) => line.takes) } };
}

interface Group {
  readonly consumableId: string;
  readonly lines: readonly UsageDraft[];
}

/** Lines that share single doses are served together; every other line by itself. */
function groupsOf(input: IssueInput): Group[] {
  const dosed = new Set(
    input.candidates.filter((c) => c.dispensing === 'single-dose').map((c) => c.consumableId),
  );
  const groups = new Map<string | UsageDraft, UsageDraft[]>();
  for (const line of input.lines) {
    const { consumableId } = line;
    const inDoses = dosed.has(consumableId) || input.consumableOf(consumableId).dose !== null;
    const key = line.sharesDose && inDoses && line.dispensed > 0n ? consumableId : line;
    groups.set(key, [...(groups.get(key) ?? []), line]);
  }
  return [...groups.values()].flatMap((lines) => {
    const [first] = lines;
    return first ? [{ consumableId: first.consumableId, lines }] : [];
  });
}

function dispensedBy(lines: readonly UsageDraft[]): Quantity {
  return quantityFromMicro(lines.reduce((sum, line) => sum + line.dispensed, 0n));
}

export function afterOpeningUseBy(
  candidate: Candidate,
  day: IsoDate,
  of: Pick<IssuedConsumable, 'life_after_opening' | 'life_after_opening_unit'>,
): IsoDate | null {
  const { life_after_opening: value, life_after_opening_unit: unit } = of;
  const life = value === null || unit === null ? null : { value, unit };
  return effectiveExpiry({ labelExpiry: candidate.labelExpiry, openedOn: day, life });
}

/** Per consumable: a scanned lot of which nothing may be used, if no scanned lot has any. */
function lotsWithoutStock(input: IssueInput): Map<string, string> {
  const usable = input.candidates.filter((c) => blockedOn(c, input.day) === undefined);
  const onHand = new Set(usable.map((c) => c.lotId));
  const found = new Map<string, string>();
  const served = new Set<string>();
  for (const { lotId } of input.scanned) {
    const consumableId = input.lots.get(lotId)?.consumable_id;
    if (consumableId === undefined) continue;
    if (onHand.has(lotId)) served.add(consumableId);
    else found.set(consumableId, found.get(consumableId) ?? lotId);
  }
  for (const consumableId of served) found.delete(consumableId);
  return found;
}

function issuedLine(
  draft: UsageDraft,
  takes: readonly Take[],
  quantity: Quantity,
  lotId: string | null,
  input: IssueInput,
): IssuedLine {
  const { unitCost } = input.consumableOf(draft.consumableId);
  const taken = takes.reduce((sum, take) => sum + take.quantity, 0n);
  const paid = takes.reduce((sum, take) => sum + take.cost, 0n);
  if (quantity === 0n) {
    const charged = quantityFromMicro(taken);
    return { draft, takes, missing: null, charged, cost: moneyFromMicro(paid) };
  }
  const price = unitCost ?? moneyFromMicro(0n);
  const estimate = shortfallCost(quantity, price);
  return {
    draft,
    takes,
    missing: { quantity, unitCost: price, costKnown: unitCost !== null, lotId },
    charged: quantityFromMicro(taken + quantity),
    cost: moneyFromMicro(paid + estimate),
  };
}

/** What a shortfall is taken to cost until it is settled: the last known cost per stock unit. */
export function shortfallCost(open: Quantity, unitCost: Money): bigint {
  return multiplyQuantity(open, quantityFromMicro(unitCost), 'half-up');
}

/** What is charged of something bought in single doses: whole ones. */
export function wholeDoses(missing: bigint, dose: Quantity | null): Quantity {
  if (dose === null) return quantityFromMicro(missing);
  return quantityFromMicro(((missing + dose - 1n) / dose) * dose);
}
