import { Injectable } from '@nestjs/common';
import { formatQuantity, quantityFromMicro } from '#lib/measure';
import { type Actor, Clock, refuse, UnitOfWork, unknownReference } from '#lib/platform';
import { isoDay } from '../domain/forecast/calendar.js';
import { candidateMethods } from '../domain/forecast/index.js';
import { methodKey } from '../domain/forecast/methods.js';
import { expectedFromSteps } from '../domain/forecast/quantity-grid.js';
import type { BookedUse } from '../domain/forecast/shelf-forecast.js';
import {
  assumedFigures,
  assumptionSentence,
  choiceSentence,
} from '../domain/planning/forecast-words.js';
import { type OneOffSpan, weeklyDemand } from '../domain/planning/item-history.js';
import type { HorizonDto, ItemForecastDto, UsageHistoryDto } from '../http/forecast.dto.js';
import { bookedForecast } from './booked-view.js';
import {
  type ForecastOfItem,
  ForecastShelf,
  loadShelfUse,
  usualHorizon,
} from './forecast-shelf.js';
import { loadPlannedItems, loadPlanningRules } from './planning-facts.js';

const HORIZONS = [7, 14, 21, 30, 45, 60, 75, 90] as const;
const LEVELS = ['0.05', '0.25', '0.5', '0.75', '0.9', '0.95', '0.98', '0.99'] as const;

/** What was used of a consumable, and what is expected to be, with how the forecast was found. */
@Injectable()
export class GetForecast {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
    private readonly forecastShelf: ForecastShelf,
  ) {}

  async run(actor: Actor, consumableId: string, at: string | null): Promise<ItemForecastDto> {
    const today = this.clock.today(actor.timeZone);
    const shelf = await this.uow.read(actor.practiceId, async (tx) => {
      const items = await loadPlannedItems(tx, today);
      const rules = await loadPlanningRules(tx, today);
      if (at !== null) {
        const place = 'SELECT id FROM locations WHERE practice_id = $1 AND id = $2';
        const found = await tx.query(place, [tx.practiceId, at]);
        if (found.length === 0) throw unknownReference('locationId', 'location');
      }
      return loadShelfUse(tx, today, { items, rules }, at);
    });
    const item = shelf.items.find((each) => each.consumableId === consumableId);
    if (!item) throw refuse('not_found', 'There is no active consumable with this id.');
    const found = (await this.forecastShelf.run(shelf)).get(consumableId);
    if (!found) throw new Error('A consumable of the shelf has no forecast');
    const booked = shelf.booked.of(consumableId);
    return {
      ...{ consumable: item.consumable, asOf: today, locationId: at },
      history: historyDto(found, shelf.oneOffs.get(consumableId) ?? []),
      judgedDays: usualHorizon(shelf.rules),
      ...methodDto(found, item.consumable.unit),
      horizons: HORIZONS.map((days) => horizonDto(found, days, booked)),
      booked: bookedForecast(found, shelf.booked, item.consumable),
    };
  }
}

function historyDto(found: ForecastOfItem, oneOffs: readonly OneOffSpan[]): UsageHistoryDto {
  const { history, uses } = found;
  const { step } = history;
  const total = uses.reduce((sum, use) => sum + use.issued + (use.shortfall ?? 0n), 0n);
  return {
    from: isoDay(history.firstDay),
    to: isoDay(history.firstDay + history.demand.length - 1),
    total: text(total),
    demand: text(total - history.leftOut),
    knownDays: history.counts.reduce((sum, known) => sum + known, 0),
    days: uses.map((use) => ({
      day: isoDay(use.day),
      issued: text(use.issued),
      shortfall: text(use.shortfall ?? 0n),
      retakes: text(use.retakes ?? 0n),
      oneOff: oneOffs.some(({ first, last }) => use.day >= first && use.day <= last),
    })),
    weeks: weeklyDemand(history).map(({ monday, steps }) => ({
      monday: isoDay(monday),
      demand: text(expectedFromSteps(steps, step)),
    })),
  };
}

function methodDto({ judged, forecast }: ForecastOfItem, unit: string) {
  const { item, step } = forecast;
  const chosen = methodKey(item.method);
  return {
    demandClass: forecast.demandClass,
    level: text(expectedFromSteps(item.level, step)),
    diedOut: item.died,
    step: text(step),
    origins: judged.origins,
    methods: candidateMethods('day').map((method, m) => {
      const loss = judged.losses[m] ?? null;
      return {
        method: methodKey(method),
        loss: loss === null ? null : text(expectedFromSteps(loss, step)),
        chosen: methodKey(method) === chosen,
      };
    }),
    reason: item.choice.reason,
    assumed: forecast.assumptions.map(assumedFigures),
    choice: choiceSentence(item.choice.reason, chosen, judged.origins),
    assumptions: forecast.assumptions.map((assumption) => assumptionSentence(assumption, unit)),
  };
}

function horizonDto(
  { forecast }: ForecastOfItem,
  days: number,
  booked: BookedUse | undefined,
): HorizonDto {
  const use = forecast.over(days, booked);
  return {
    days,
    mean: text(use.mean),
    deviation: text(use.deviation),
    quantiles: LEVELS.map((level) => ({ level, quantity: text(use.quantile(Number(level))) })),
  };
}

function text(micro: bigint): string {
  return formatQuantity(quantityFromMicro(micro));
}
