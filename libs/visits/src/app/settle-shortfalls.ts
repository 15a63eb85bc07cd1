import { Injectable, type OnModuleInit } from '@nestjs/common';
import { type Quantity, quantityFromMicro } from '#lib/measure';
import { type Actor, newId, type Tx } from '#lib/platform';
import {
  applyStockChanges,
  chooseStock,
  findCandidates,
  StockArrivals,
  type Take,
} from '#lib/stock';
import { type OpenShortfall, openShortfalls, writeSettlement } from '../db/shortfall-record.js';
import { afterOpeningUseBy } from '../domain/issue-visit.js';
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
  const plan = chooseStock(lotId === null ? all : all.filter((c) => c.lotId === lotId), {
    day,
    locationId,
    needs: group.map((s) => ({ consumableId: s.consumableId, quantity: s.open })),
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
  const shortfallOf = (take: Take): OpenShortfall => {
    const shortfall = group[take.need];
    if (!shortfall) throw new Error('A take belongs to no shortfall');
    return shortfall;
  };
  const { changes } = issueChanges(plan, (take) => {
    const { id, visitId, usageLineId } = shortfallOf(take);
    return { visitId, usageLineId, shortfallId: id };
  });
  await applyStockChanges(tx, actor.personId, changes);
  const served = group.map((s, i) => servedOf(s, plan.missing[i] ?? s.open));
  await writeSettlement(
    tx,
    group.map((s, i) => ({ id: s.id, served: served[i] ?? quantityFromMicro(0n) })),
  );
  return group.filter((_, i) => (served[i] ?? 0n) > 0n);
}

function servedOf(shortfall: OpenShortfall, missing: Quantity): Quantity {
  return quantityFromMicro(shortfall.open - missing);
}
