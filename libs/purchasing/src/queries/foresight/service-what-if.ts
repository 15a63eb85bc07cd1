import { createHash } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import { formatMoney, formatQuantity } from '#lib/measure';
import type { Actor } from '#lib/platform';
import { seededRandom, seedFrom } from '../../domain/forecast/index.js';
import type { ItemFacts } from '../../domain/policy/index.js';
import {
  CURVE_LEVELS,
  type CurvePoint,
  curveSteps,
  type ServiceCurve,
  type ShelfSums,
  shelfCurve,
  shelfNow,
} from '../../domain/policy/service-curve.js';
import type { ServiceCurveDto, ServicePointDto } from '../../http/foresight/what-if.dto.js';
import type { ShelfForecasts } from '../forecast-shelf.js';
import { Turns } from '../take-turns.js';
import { type Foresight, ForesightShelf } from './foresight-shelf.js';

/** One item is followed more often than each of many. */
const RUNS_OF_ONE = 100;
/** So many whole shelves are remembered, until a fact changes. */
const MOST_REMEMBERED = 4;

interface Remembered {
  readonly forecasts: ShelfForecasts;
  readonly curves: Promise<readonly ServiceCurve[]>;
}

/** Service against stock value and expected waste, for one item or the whole shelf. */
@Injectable()
export class ServiceWhatIf {
  private readonly remembered = new Map<string, Remembered>();

  constructor(private readonly shelf: ForesightShelf) {}

  async run(actor: Actor, consumableId: string | null): Promise<ServiceCurveDto> {
    const foresight = await this.shelf.run(actor);
    const { today: asOf, shelf } = foresight;
    const common = { asOf, currency: actor.currency };
    if (consumableId === null) {
      const { serviceMeasure: measure, serviceLevel } = shelf.rules.settings;
      return { ...common, ...shelfDto(await this.curvesOf(foresight), { measure, serviceLevel }) };
    }
    const item = foresight.item(consumableId);
    const facts = foresight.factsOf(item);
    const levels = withLevel(facts.target.level);
    const curve = await curveOf(facts, { levels, runs: RUNS_OF_ONE }, new Turns());
    return {
      ...common,
      consumable: item.consumable,
      measure: facts.target.measure,
      horizonDays: curve.horizonDays,
      items: curve.now ? 1 : 0,
      itemsWithoutPrice: curve.now && curve.now.stockValue === null ? 1 : 0,
      now: curve.now ? itemPoint(curve.now) : null,
      points: curve.points.map(itemPoint),
    };
  }

  /** Seconds of work for a large shelf, so it is done once for all who ask meanwhile. */
  private async curvesOf(foresight: Foresight): Promise<readonly ServiceCurve[]> {
    const { shelf, forecasts } = foresight;
    const facts = shelf.items.map((item) => foresight.factsOf(item));
    const key = keyOf(foresight, facts);
    const found = this.remembered.get(key);
    if (found && found.forecasts === forecasts) return found.curves;
    const levels = withLevel(Number(shelf.rules.settings.serviceLevel));
    const curves = curvesOf(facts, levels);
    this.remembered.delete(key);
    this.remembered.set(key, { forecasts, curves });
    const [oldest] = this.remembered.keys();
    if (this.remembered.size > MOST_REMEMBERED && oldest !== undefined) {
      this.remembered.delete(oldest);
    }
    try {
      return await curves;
    } catch (error) {
      this.remembered.delete(key);
      throw error;
    }
  }
}

function withLevel(level: number): readonly number[] {
  return [...new Set([...CURVE_LEVELS, level])].sort((a, b) => a - b);
}

async function curvesOf(
  items: readonly ItemFacts[],
  levels: readonly number[],
): Promise<readonly ServiceCurve[]> {
  const turns = new Turns();
  const curves: ServiceCurve[] = [];
  for (const facts of items) curves.push(await curveOf(facts, { levels }, turns));
  return curves;
}

function curveOf(
  facts: ItemFacts,
  options: { readonly levels: readonly number[]; readonly runs?: number },
  turns: Turns,
): Promise<ServiceCurve> {
  const random = seededRandom(seedFrom(facts.itemId));
  return turns.through(curveSteps(facts, { random, ...options }));
}

/** The facts themselves; of the demand, what is booked: the rest is known by its forecasts. */
function keyOf({ shelf, today }: Foresight, facts: readonly ItemFacts[]): string {
  const hash = createHash('sha256');
  const add = (value: unknown) =>
    hash.update(JSON.stringify(value, (_, v) => (typeof v === 'bigint' ? String(v) : v)) ?? '-');
  add([shelf.practiceId, today]);
  for (const { demand: _, ...item } of facts) add([item, shelf.booked.of(item.itemId)]);
  return hash.digest('base64');
}

function shelfDto(
  curves: readonly ServiceCurve[],
  settings: { readonly measure: string; readonly serviceLevel: string },
): Omit<ServiceCurveDto, 'asOf' | 'currency'> {
  const now = shelfNow(curves);
  const points = shelfCurve(curves);
  // Where no item has a level of its own, what is in force is the level of the practice.
  const plain = points.find(({ level }) => level === Number(settings.serviceLevel));
  const level = plain && isSame(plain, now) ? plain.level : null;
  return {
    consumable: null,
    measure: settings.measure,
    horizonDays: curves[0]?.horizonDays ?? 0,
    items: now.items,
    itemsWithoutPrice: now.itemsWithoutPrice,
    now: now.items === 0 ? null : shelfPoint(level, now),
    points: points.map((point) => shelfPoint(point.level, point)),
  };
}

function isSame(a: ShelfSums, b: ShelfSums): boolean {
  const values = a.stockValue === b.stockValue && a.wastedValue === b.wastedValue;
  return values && a.stockOuts === b.stockOuts;
}

function shelfPoint(level: number | null, sums: ShelfSums): ServicePointDto {
  return {
    level: level === null ? null : String(level),
    stockValue: formatMoney(sums.stockValue),
    wastedValue: formatMoney(sums.wastedValue),
    stockOuts: sums.stockOuts.toFixed(2),
    item: null,
  };
}

function itemPoint(point: CurvePoint): ServicePointDto {
  const { stockValue, wastedValue } = point;
  return {
    level: String(point.level),
    stockValue: stockValue === null ? null : formatMoney(stockValue),
    wastedValue: wastedValue === null ? null : formatMoney(wastedValue),
    stockOuts: point.stockOuts.toFixed(2),
    item: {
      reorderPoint: formatQuantity(point.reorderPoint),
      orderUpTo: formatQuantity(point.orderUpTo),
      averageStock: formatQuantity(point.averageStock),
      wasted: formatQuantity(point.wasted),
      fillRate: point.fillRate.toFixed(6),
    },
  };
}
