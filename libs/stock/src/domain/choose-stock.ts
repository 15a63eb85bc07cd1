import { layerCost, type Money, type Quantity, quantityFromMicro } from '#lib/measure';
import {
  blockedOn,
  type Candidate,
  type Day,
  effectiveExpiryOf,
  type LayerState,
  type Sureness,
} from './candidate.js';

/** What one usage line needs of one consumable, in stock units, out of the container. */
export interface Need {
  readonly consumableId: string;
  readonly quantity: Quantity;
}

export interface IssueRequest {
  readonly day: Day;
  /** Where the goods are used: a container opened for it stays there. */
  readonly locationId: string;
  readonly needs: readonly Need[];
  /** Lots or containers that were scanned: they go first. */
  readonly scanned: ReadonlySet<string>;
  /** Effective expiry of a container opened on that day. */
  readonly ifOpenedUseBy: (candidate: Candidate, day: Day) => Day | null;
  /** Goods may have been in use before they were booked in: see settling shortfalls. */
  readonly evenIfReceivedLater?: boolean;
  readonly newId: () => string;
}

export interface Opening {
  readonly holdingId: string;
  readonly fromHoldingId: string;
  readonly fromLocationId: string;
  readonly layerId: string;
  readonly locationId: string;
  readonly quantity: Quantity;
  readonly useBy: Day | null;
  readonly openedOn: Day;
}

export interface Take {
  readonly need: number;
  readonly holdingId: string;
  readonly locationId: string;
  readonly layerId: string;
  readonly lotId: string;
  readonly lotNumber: string | null;
  readonly quantity: Quantity;
  readonly cost: Money;
  readonly sureness: Sureness;
  readonly outOfOrder: boolean;
  /** The day of use, or of receipt where goods were in use before they were booked in. */
  readonly occurredOn: Day;
}

export interface IssuePlan {
  readonly openings: readonly Opening[];
  readonly takes: readonly Take[];
  /** Per need: what was not to be had, in stock units still needed. */
  readonly missing: readonly Quantity[];
  /** Per need: what leaves stock (whole single doses), shortfall not included. */
  readonly charged: readonly Quantity[];
  /** No real use opens so many: something was mistyped, and the plan must not be booked. */
  readonly tooManyContainers: boolean;
  readonly holdings: ReadonlyMap<string, Quantity>;
  readonly layers: ReadonlyMap<string, LayerState>;
}

interface Slot {
  readonly candidate: Candidate;
  onHand: bigint;
  /** What it was before this plan opened it: its place in the order. */
  readonly before: Candidate;
  readonly scanned: boolean;
}

const MOST_OPENINGS = 1000;
const LATEST = '9999-12-31';

/** FEFO: nearest place, opened before sealed, earliest effective expiry, earliest receipt, id. */
function compareFefo(a: Candidate, b: Candidate): number {
  const near = (a.distance ?? Number.MAX_SAFE_INTEGER) - (b.distance ?? Number.MAX_SAFE_INTEGER);
  if (near !== 0) return near;
  if ((a.openedOn === null) !== (b.openedOn === null)) return a.openedOn === null ? 1 : -1;
  return (
    compareText(effectiveExpiryOf(a) ?? LATEST, effectiveExpiryOf(b) ?? LATEST) ||
    compareText(a.receivedOn, b.receivedOn) ||
    compareText(a.layerId, b.layerId) ||
    compareText(a.holdingId, b.holdingId)
  );
}

function compareText(a: string, b: string): number {
  if (a === b) return 0;
  return a < b ? -1 : 1;
}

/**
 * Chooses which containers and lots serve the needs, in the order of the needs, and what each part
 * costs. Nothing expired, blocked or not yet received is ever chosen; what cannot be served is said
 * in `missing`.
 */
export function chooseStock(candidates: readonly Candidate[], request: IssueRequest): IssuePlan {
  return new Chooser(candidates, request).run();
}

class Chooser {
  private readonly slots = new Map<string, Slot[]>();
  private readonly openings: Opening[] = [];
  private readonly takes: Take[] = [];
  private readonly holdings = new Map<string, Quantity>();
  private readonly layers = new Map<string, LayerState>();

  constructor(
    candidates: readonly Candidate[],
    private readonly request: IssueRequest,
  ) {
    for (const candidate of candidates) {
      if (!this.usable(candidate)) continue;
      const slots = this.slots.get(candidate.consumableId) ?? [];
      slots.push({
        candidate,
        onHand: candidate.onHand,
        before: candidate,
        scanned: this.isScanned(candidate),
      });
      this.slots.set(candidate.consumableId, slots);
    }
    for (const slots of this.slots.values()) slots.sort(compareSlots);
  }

  run(): IssuePlan {
    const missing: Quantity[] = [];
    const charged: Quantity[] = [];
    this.request.needs.forEach((need, index) => {
      const before = this.takes.length;
      missing.push(quantityFromMicro(this.serve(need, index)));
      const taken = this.takes.slice(before).reduce((sum, t) => sum + t.quantity, 0n);
      charged.push(quantityFromMicro(taken));
    });
    const { openings, takes, holdings, layers } = this;
    const tooManyContainers = openings.length > MOST_OPENINGS;
    return { openings, takes, missing, charged, tooManyContainers, holdings, layers };
  }

  private usable(candidate: Candidate): boolean {
    const blocked = blockedOn(candidate, this.request.day);
    const tooLate = blocked === 'not yet received' || blocked === 'opened later';
    const allowed = blocked === undefined || (tooLate && this.request.evenIfReceivedLater === true);
    const reachable = candidate.distance !== null || this.isScanned(candidate);
    return allowed && reachable && candidate.onHand > 0n;
  }

  private isScanned(candidate: Candidate): boolean {
    const { scanned } = this.request;
    return scanned.has(candidate.holdingId) || scanned.has(candidate.lotId);
  }

  /** Serves one need and answers what is still missing. */
  private serve(need: Need, index: number): bigint {
    let remaining: bigint = need.quantity;
    const slots = this.slots.get(need.consumableId) ?? [];
    for (let i = 0; i < slots.length && remaining > 0n; ) {
      const slot = slots[i];
      if (!slot || this.openings.length > MOST_OPENINGS) break;
      if (slot.onHand === 0n) {
        i += 1;
        continue;
      }
      if (slot.candidate.dispensing === 'multi-use' && slot.candidate.openedOn === null) {
        slots.splice(i, 0, this.open(slot));
        continue;
      }
      const [amount, covered] = portion(slot, remaining);
      if (amount === 0n) {
        i += 1;
        continue;
      }
      this.take(slot, amount, index);
      remaining -= covered;
    }
    return remaining > 0n ? remaining : 0n;
  }

  /** Opens the next sealed container of a slot; it stands before the sealed rest from then on. */
  private open(sealed: Slot): Slot {
    const { candidate } = sealed;
    const { locationId } = this.request;
    const day = this.dayOf(candidate);
    const amount = candidate.content < sealed.onHand ? candidate.content : sealed.onHand;
    const opening: Opening = {
      holdingId: this.request.newId(),
      fromHoldingId: candidate.holdingId,
      fromLocationId: candidate.locationId,
      layerId: candidate.layerId,
      locationId,
      quantity: quantityFromMicro(amount),
      useBy: this.request.ifOpenedUseBy(candidate, day),
      openedOn: day,
    };
    this.openings.push(opening);
    sealed.onHand -= amount;
    this.holdings.set(candidate.holdingId, quantityFromMicro(sealed.onHand));
    this.holdings.set(opening.holdingId, opening.quantity);
    return {
      candidate: {
        ...candidate,
        holdingId: opening.holdingId,
        locationId,
        openedOn: day,
        useBy: opening.useBy,
        onHand: opening.quantity,
      },
      onHand: amount,
      before: candidate,
      scanned: sealed.scanned,
    };
  }

  private take(slot: Slot, amount: bigint, need: number): void {
    const { candidate } = slot;
    const quantity = quantityFromMicro(amount);
    const state = this.layers.get(candidate.layerId) ?? candidate;
    const cost = layerCost({
      landedCost: state.landedCost,
      received: state.received,
      outBefore: state.outQuantity,
      outCostBefore: state.outCost,
      take: quantity,
    });
    this.layers.set(candidate.layerId, {
      layerId: candidate.layerId,
      received: state.received,
      landedCost: state.landedCost,
      outQuantity: quantityFromMicro(state.outQuantity + amount),
      outCost: (state.outCost + cost) as Money,
    });
    this.takes.push({
      need,
      holdingId: candidate.holdingId,
      locationId: candidate.locationId,
      layerId: candidate.layerId,
      lotId: candidate.lotId,
      lotNumber: candidate.lotNumber,
      quantity,
      cost,
      sureness: this.surenessOf(slot),
      outOfOrder: this.isOutOfOrder(slot),
      occurredOn: this.dayOf(candidate),
    });
    slot.onHand -= amount;
    this.holdings.set(candidate.holdingId, quantityFromMicro(slot.onHand));
  }

  private surenessOf(slot: Slot): Sureness {
    const { candidate } = slot;
    if (candidate.lotNumber === null) return 'not stated';
    if (slot.scanned) return 'scanned';
    if (this.dayOf(slot.before) > this.request.day) return 'not stated';
    return slot.before.openedOn === null ? 'assumed' : 'open container';
  }

  /** A scanned lot is out of order when FEFO alone would have taken another first. */
  private isOutOfOrder(slot: Slot): boolean {
    if (!slot.scanned) return false;
    const slots = this.slots.get(slot.candidate.consumableId) ?? [];
    return slots.some(
      (other) =>
        other !== slot &&
        other.onHand > 0n &&
        !other.scanned &&
        compareFefo(other.before, slot.before) < 0,
    );
  }

  private dayOf(candidate: Candidate): Day {
    const days = [this.request.day, candidate.receivedOn, candidate.openedOn ?? ''];
    return days.reduce((latest, day) => (day > latest ? day : latest));
  }
}

/** What was scanned goes first, then FEFO. */
function compareSlots(a: Slot, b: Slot): number {
  const scanned = Number(b.scanned) - Number(a.scanned);
  return scanned !== 0 ? scanned : compareFefo(a.candidate, b.candidate);
}

/** How much leaves a container for a remaining need, and how much of the need that covers. */
function portion(slot: Slot, remaining: bigint): [amount: bigint, covered: bigint] {
  if (slot.candidate.dispensing !== 'single-dose') {
    const amount = remaining < slot.onHand ? remaining : slot.onHand;
    return [amount, amount];
  }
  const dose: bigint = slot.candidate.content;
  const wanted = (remaining + dose - 1n) / dose;
  const there = slot.onHand / dose;
  const amount = (wanted < there ? wanted : there) * dose;
  return [amount, amount < remaining ? amount : remaining];
}
