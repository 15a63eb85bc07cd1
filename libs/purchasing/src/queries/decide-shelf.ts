import { Injectable } from '@nestjs/common';
import { type Actor, Clock, type IsoDate, UnitOfWork } from '#lib/platform';
import { loadSubstitutes, type SubstitutePair } from '../db/substitutes.js';
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

/**
 * What the policy makes of every active consumable today. Every item is a step of its own, so that
 * other requests get their turn in between.
 */
@Injectable()
export class DecideShelf {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
    private readonly forecastShelf: ForecastShelf,
  ) {}

  async run(actor: Actor): Promise<DecidedShelf> {
    const { currency, practiceId } = actor;
    const today = this.clock.today(actor.timeZone);
    const { shelf, pairs } = await this.uow.read(practiceId, async (tx) => {
      const known = {
        items: await loadPlannedItems(tx, today),
        rules: await loadPlanningRules(tx, today),
      };
      const standing = (await loadSubstitutes(tx)).filter((pair) => pair.withdrawnAt === null);
      return { shelf: await loadShelfUse(tx, today, known), pairs: standing };
    });
    const items = await decideAll(shelf, await this.forecastShelf.run(shelf));
    return { today, currency, shelf, items, pairs };
  }
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
