import type { ComputedLevel } from './computed-level.js';
import { type Offer, type SuggestedOrder, suggestOrder } from './suggest-order.js';

/** By whose word a level holds. */
export const LEVEL_KINDS = ['set in planning', 'typed in', 'computed'] as const;
export type LevelKind = (typeof LEVEL_KINDS)[number];

/** Levels of one origin, in millionths; null: nobody said. */
export interface GivenLevels {
  readonly at: bigint | null;
  readonly upTo: bigint | null;
}

/** All that is known of when a consumable is to be ordered. */
export interface KnownLevels {
  readonly planning: GivenLevels;
  readonly typedIn: GivenLevels;
  readonly computed: ComputedLevel | null;
}

/** What is there now, in millionths. */
export interface Position {
  readonly usable: bigint;
  readonly onOrder: bigint;
  readonly owed: bigint;
}

export interface LevelInForce {
  readonly kind: LevelKind;
  readonly at: bigint;
  readonly upTo: bigint | null;
  /** Expected to expire before goods can be here: it no longer counts. */
  readonly expiringFirst: bigint;
}

/**
 * The level that a consumable is ordered by: what was set in planning, else what was typed in, else what
 * was computed; null when there is none. What was typed in is no reason to be silent where planning
 * orders: its level goes first as long as it alone is reached.
 */
export function levelInForce(
  { planning, typedIn, computed }: KnownLevels,
  stock: Position,
): LevelInForce | null {
  const expiringFirst = computed?.expiringFirst ?? 0n;
  if (planning.at !== null) {
    const upTo = planning.upTo ?? computed?.orderUpTo ?? null;
    return { kind: 'set in planning', at: planning.at, upTo, expiringFirst };
  }
  // What a person wrote at the consumable is compared with what is there, and with nothing else.
  const typed: LevelInForce | null =
    typedIn.at === null
      ? null
      : { kind: 'typed in', at: typedIn.at, upTo: typedIn.upTo, expiringFirst: 0n };
  if (typed !== null && (computed === null || isDue(typed, stock, computed))) return typed;
  if (computed === null) return null;
  return typed === null || isDueAsComputed(computed, stock) ? levelOf(computed) : typed;
}

function levelOf({
  reorderPoint: at,
  orderUpTo: upTo,
  expiringFirst,
}: ComputedLevel): LevelInForce {
  return { kind: 'computed', at, upTo, expiringFirst };
}

export function positionOf({ usable, onOrder, owed }: Position): bigint {
  return usable + onOrder - owed;
}

/** Whether it is to be ordered: what is hardly used any more is bought for what is owed only. */
export function isDue(
  level: LevelInForce,
  stock: Position,
  computed: ComputedLevel | null,
): boolean {
  if (positionOf(stock) - level.expiringFirst > level.at) return false;
  if (level.kind === 'typed in' || stock.owed > 0n) return true;
  if (level.kind === 'set in planning' && level.at > 0n) return true;
  return computed !== null && !computed.hardlyUsed;
}

/** Whether planning orders by its own level what is there now. */
export function isDueAsComputed(computed: ComputedLevel, stock: Position): boolean {
  return isDue(levelOf(computed), stock, computed);
}

export type LevelOrder = SuggestedOrder | 'held back' | undefined;

/**
 * What to order: what planning computed as long as it holds, and otherwise whole packs up to the level
 * wanted. 'held back': due, but a limit of planning allows no pack. Undefined: nobody says how to buy it.
 */
export function orderAt(
  level: LevelInForce,
  stock: Position,
  known: { readonly computed: ComputedLevel | null; readonly offers: readonly Offer[] },
): LevelOrder {
  const { computed, offers } = known;
  const position = positionOf(stock);
  const offer = offers.find((each) => each.presentationId === computed?.presentationId);
  if (computed !== null && offer && level.kind !== 'typed in') {
    const asComputed = computed.position === position && computed.reorderPoint === level.at;
    if (asComputed && computed.reason === 'stopped by a limit') return 'held back';
    if (asComputed && computed.packs > 0n) {
      return { offer, packs: computed.packs, cost: computed.total };
    }
  }
  const levels = {
    position: position - level.expiringFirst,
    reorderAt: level.at,
    reorderUpTo: level.upTo,
  };
  return suggestOrder(levels, offer && level.kind !== 'typed in' ? [offer] : offers);
}
