import { Injectable } from '@nestjs/common';
import { type Actor, Clock, type IsoDate, refuse, UnitOfWork } from '#lib/platform';
import { itemFacts } from '../../domain/planning/plan-item.js';
import { spanDemand } from '../../domain/planning/span-demand.js';
import type { ItemFacts } from '../../domain/policy/index.js';
import {
  ForecastShelf,
  loadShelfUse,
  type ShelfForecasts,
  type ShelfUse,
} from '../forecast-shelf.js';
import { loadPlannedItems, loadPlanningRules, type PlannedItem } from '../planning-facts.js';

/** The shelf as planning sees it today, item by item. */
export class Foresight {
  constructor(
    readonly today: IsoDate,
    readonly shelf: ShelfUse,
    readonly forecasts: ShelfForecasts,
  ) {}

  /** Refuses a consumable that is not there or not active. */
  item(consumableId: string): PlannedItem {
    const item = this.shelf.items.find((each) => each.consumableId === consumableId);
    if (!item) throw refuse('not_found', 'There is no active consumable with this id.');
    return item;
  }

  /** The same facts that the proposals rest on. */
  factsOf(item: PlannedItem): ItemFacts {
    const found = this.forecasts.get(item.consumableId);
    if (!found) throw new Error('A consumable of the shelf has no forecast');
    const { forecast, history } = found;
    const booked = this.shelf.booked.of(item.consumableId);
    const demand = spanDemand(forecast.item, history, booked);
    return itemFacts(item, { demand, step: forecast.step }, this.shelf.rules);
  }
}

@Injectable()
export class ForesightShelf {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
    private readonly forecastShelf: ForecastShelf,
  ) {}

  async run(actor: Actor): Promise<Foresight> {
    const today = this.clock.today(actor.timeZone);
    const shelf = await this.uow.read(actor.practiceId, async (tx) => {
      const items = await loadPlannedItems(tx, today);
      const rules = await loadPlanningRules(tx, today);
      return loadShelfUse(tx, today, { items, rules });
    });
    return new Foresight(today, shelf, await this.forecastShelf.run(shelf));
  }
}
