import { Injectable, type OnModuleInit } from '@nestjs/common';
import { type Quantity, quantityFromMicro } from '#lib/measure';
import { type Actor, newId, type Tx } from '#lib/platform';
import {
  applyStockChanges,
  chooseStock,
  findCandidates,
  type IssuePlan,
  StockArrivals,
  type Take,
} from '#lib/stock';
import { type OpenShortfall, openShortfalls, writeSettlement } from '../db/shortfall-record.js';
import { afterOpeningUseBy } from '../domain/issue-visit.js';
import { divide } from '../domain/share-dose.js';
import { recostVisits } from './recost-visits.js';
import { unsettle } from './unsettle-shortfalls.js';
import { issueChanges } from './visit-changes.js';

/**
 * Gives earlier visits the goods that they used before the book knew of them, the earliest visit
 * first, and costs those visits anew with what the goods really cost.
 */
@Injectable()
export class SettleShortfalls implements OnModuleInit {
  constructor(private readonly arrivals: StockArrivals) {}

  onModuleInit(): void {
    this.arrivals.register((tx, actor, ids) => this.run(tx, actor, ids));
    this.arrivals.registerWithdrawal((tx, actor, what) => unsettle(tx, actor, what));
  }

  /** Answers how many shortfalls got at least part of what they miss. */
  async run(tx: Tx, actor: Actor, consumableIds: readonly string[]): Promise<number> {
    const open = await openShortfalls(tx, consumableIds);
    const visits = new Set<string>();
    let settled = 0;
    for (const group of byPlaceAndDay(open)) {
      const touched = await settleGroup(tx, actor, group);
      for (const shortfall of touched) visits.add(shortfall.visitId);
      settled += touched.length;
    }
    if (visits.size > 0) await recostVisits(tx, actor, [...visits]);
    return settled;
  }
}

/**
 * Shortfalls that draw on the same stock: one day, one place, at most one lot that was scanned. Those
 * that only one lot can settle come first, so that no other takes it from them.
 */
function byPlaceAndDay(open: readonly OpenShortfall[]): OpenShortfall[][] {
  const groups = new Map<string, OpenShortfall[]>();
  for (const shortfall of open) {
    const key = [shortfall.usedOn, shortfall.locationId, shortfall.lotId ?? ''].join(' ');
    groups.set(key, [...(groups.get(key) ?? []), shortfall]);
  }
  const all = [...groups.values()];
  return [...all.filter(([of]) => of?.lotId !== null), ...all.filter(([of]) => of?.lotId === null)];
}

async function settleGroup(
  tx: Tx,
  actor: Actor,
  group: readonly OpenShortfall[],
): Promise<OpenShortfall[]> {
  const [first] = group;
  if (!first) return [];
  const { usedOn: day, locationId, lotId } = first;
  const all = await findCandidates(tx, {
    consumableIds: [...new Set(group.map((s) => s.consumableId))],
    locationId,
    day,
    scanned: lotId === null ? [] : [lotId],
    lock: true,
  });
  const needs = needsOf(group);
  const plan = chooseStock(lotId === null ? all : all.filter((c) => c.lotId === lotId), {
    day,
    locationId,
    needs: needs.map(({ of, open }) => ({ consumableId: of.consumableId, quantity: open })),
    scanned: new Set(lotId === null ? [] : [lotId]),
    ifOpenedUseBy: (candidate, opened) => {
      const of = group.find((s) => s.consumableId === candidate.consumableId);
      if (!of) throw new Error('Stock of another consumable was chosen');
      return afterOpeningUseBy(candidate, opened, of);
    },
    evenIfReceivedLater: true,
    newId,
  });
  if (plan.takes.length === 0) return [];
  const settlements = needs.flatMap((need, at) => settlementsOf(need, at, plan));
  const takes = settlements.flatMap((each, i) => each.takes.map((t) => ({ ...t, need: i })));
  const { changes } = issueChanges({ ...plan, takes }, (take) => {
    const { id, visitId, usageLineId } = shortfallOf(settlements, take);
    return { visitId, usageLineId, shortfallId: id };
  });
  await applyStockChanges(tx, actor.personId, changes);
  await writeSettlement(
    tx,
    settlements.map(({ of, served }) => ({ id: of.id, served })),
  );
  return settlements.filter(({ served }) => served > 0n).map(({ of }) => of);
}

/** Shortfalls that are served together: those of a visit that share single doses, else one. */
interface Need {
  readonly of: OpenShortfall;
  readonly shortfalls: readonly OpenShortfall[];
  readonly open: Quantity;
}

function needsOf(group: readonly OpenShortfall[]): Need[] {
  const together = new Map<string, OpenShortfall[]>();
  for (const each of group) {
    const key = each.sharesDose ? `${each.visitId} ${each.consumableId}` : each.id;
    together.set(key, [...(together.get(key) ?? []), each]);
  }
  return [...together.values()].flatMap((shortfalls) => {
    const [of] = shortfalls;
    const open = quantityFromMicro(shortfalls.reduce((sum, each) => sum + each.open, 0n));
    return of ? [{ of, shortfalls, open }] : [];
  });
}

interface Settlement {
  readonly of: OpenShortfall;
  readonly takes: readonly Take[];
  readonly served: Quantity;
}

function settlementsOf(need: Need, at: number, plan: IssuePlan): Settlement[] {
  const takes = plan.takes.filter((take) => take.need === at);
  const sharers = need.shortfalls.map(({ open }) => ({ amount: open, placed: open }));
  const parts = divide(sharers, takes, plan.missing[at] ?? need.open);
  return need.shortfalls.map((of, i) => {
    const part = parts[i];
    if (!part) throw new Error('A shortfall got no part of what it was served');
    return { of, takes: part.takes, served: quantityFromMicro(of.open - part.missing) };
  });
}

function shortfallOf(settlements: readonly Settlement[], take: Take): OpenShortfall {
  const settlement = settlements[take.need];
  if (!settlement) throw new Error('A take belongs to no shortfall');
  return settlement.of;
}
