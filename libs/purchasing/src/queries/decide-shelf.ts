import { Injectable } from '@nestjs/common';
import { type Actor, Clock, type IsoDate, UnitOfWork } from '#lib/platform';
import { type KeptLevel, keepLevels, readTime } from '../db/computed-levels.js';
import { loadSubstitutes, type SubstitutePair } from '../db/substitutes.js';
import { computedLevel } from '../domain/computed-level.js';
import { itemFacts } from '../domain/planning/plan-item.js';
import { spanDemand } from '../domain/planning/span-demand.js';
import { decideOrder, type ItemFacts, type OrderDecision } from '../domain/policy/index.js';
import {
  type ForecastOfItem,
  ForecastShelf,
  loadShelfUse,
  type ShelfForecasts,
  type ShelfUse,
} from './forecast-shelf.js';
import { loadPlannedItems, loadPlanningRules, type PlannedItem } from './planning-facts.js';
import { Turns } from './take-turns.js';

/** A consumable with its forecast and what the policy makes of it today. */
export interface Decided {
  readonly item: PlannedItem;
  readonly found: ForecastOfItem;
  readonly decision: OrderDecision;
}

export interface DecidedShelf {
  readonly today: IsoDate;
  readonly currency: string;
  readonly shelf: ShelfUse;
  readonly items: ReadonlyMap<string, Decided>;
  /** What people said may stand in for what. */
  readonly pairs: readonly SubstitutePair[];
}

/** Whose shelf is decided. */
export type ShelfOwner = Pick<Actor, 'practiceId' | 'currency' | 'timeZone'>;

/**
 * What the policy makes of every active consumable today. Every item is a step of its own, so that
 * other requests get their turn in between. The levels are kept for the alerts, which go by them: what
 * somebody was shown here and what an alert says are of the same facts.
 */
@Injectable()
export class DecideShelf {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
    private readonly forecastShelf: ForecastShelf,
  ) {}

  async run(owner: ShelfOwner): Promise<DecidedShelf> {
    const { currency, practiceId } = owner;
    const today = this.clock.today(owner.timeZone);
    const { shelf, pairs, readAt } = await this.uow.read(practiceId, async (tx) => {
      const known = {
        items: await loadPlannedItems(tx, today),
        rules: await loadPlanningRules(tx, today),
      };
      const standing = (await loadSubstitutes(tx)).filter((pair) => pair.withdrawnAt === null);
      const readAt = await readTime(tx);
      return { shelf: await loadShelfUse(tx, today, known), pairs: standing, readAt };
    });
    const items = await decideAll(shelf, await this.forecastShelf.run(shelf));
    // Nothing was used yet: nothing is known, and so there is no level.
    const levels = shelf.usage.length === 0 ? [] : levelsOf(items, today);
    await this.uow.run(practiceId, (tx) => keepLevels(tx, { computedOn: today, readAt, levels }));
    return { today, currency, shelf, items, pairs };
  }
}

function levelsOf(items: ReadonlyMap<string, Decided>, today: IsoDate): KeptLevel[] {
  return [...items.values()].flatMap(({ item, decision }) => {
    const level = computedLevel(decision, today);
    if (level === null) return [];
    const offer = item.offers.find((each) => each.presentationId === level.presentationId);
    return [{ ...level, supplierId: offer?.supplierId ?? null }];
  });
}

async function decideAll(
  shelf: ShelfUse,
  forecasts: ShelfForecasts,
): Promise<ReadonlyMap<string, Decided>> {
  const decided = new Map<string, Decided>();
  const turns = new Turns();
  for (const item of shelf.items) {
    await turns.next();
    const found = forecasts.get(item.consumableId);
    if (!found) throw new Error('A consumable of the shelf has no forecast');
    const { forecast, history } = found;
    const booked = shelf.booked.of(item.consumableId);
    const demand = spanDemand(forecast.item, history, booked);
    const facts = itemFacts(item, { demand, step: forecast.step }, shelf.rules);
    await askAhead(facts, turns);
    decided.set(item.consumableId, { item, found, decision: decideOrder(facts) });
  }
  return decided;
}

/** The spans that the decision is about to ask for, one at a time; the demand remembers them. */
async function askAhead({ demand, offers, reviewDays }: ItemFacts, turns: Turns): Promise<void> {
  for (const { days } of offers.flatMap((offer) => offer.leadTime)) {
    demand.use(0, days + reviewDays);
    await turns.next();
  }
}
