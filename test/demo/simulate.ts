import type { IsoDate } from '#lib/platform';
import { bookedAfter } from './booked.js';
import { buyToday, receiveKit } from './buying.js';
import { weekdayOf, workdaysUpTo } from './calendar.js';
import { consumableId, consumableOf } from './catalogue.js';
import { chargeVisit } from './charging.js';
import { demoId } from './dice.js';
import { afterDelivery, morning } from './events.js';
import { checkShelves, countSome, mishaps, restock } from './housekeeping.js';
import { arrivals, review, stockUp } from './ordering.js';
import { ordersNow } from './orders.js';
import type { PlannedUse } from './plan-usage.js';
import type { LotRef, VisitPayload } from './steps.js';
import { newWorld, type PlannedDay, type World } from './world.js';

/** Workdays from the end on which a visit was first entered for the wrong chart. */
const WRONG_CHART = 33;

/** Workdays from the end on which a starter kit came. */
const KIT_CAME = 3;

/** The last step of every demo book: once it is there, all of it is. */
export const LAST_VISIT = demoId('visit', 'last');

/** Lives through the months up to today, day by day, and answers what happened. */
export function simulate(today: IsoDate): World {
  const world = newWorld(today, workdaysUpTo(today));
  world.days.forEach((planned, index) => {
    liveOneDay(world, planned, index);
  });
  return world;
}

function liveOneDay(world: World, planned: PlannedDay, index: number): void {
  const { day } = planned;
  const before = world.days[index - 1]?.day;
  if (before === undefined) stockUp(world, day);
  const deliveries = arrivals(world, day);
  settle(world, day);
  afterDelivery(world, day, index, deliveries);
  morning(world, day, index);
  if (world.days.length - 1 - index === KIT_CAME) receiveKit(world, day);
  const newWeek = before === undefined || weekdayOf(before) >= weekdayOf(day);
  if (newWeek) {
    restock(world, day);
    settle(world, day);
  }
  if (before !== undefined && before.slice(0, 7) !== day.slice(0, 7)) checkShelves(world, day);
  if (before !== undefined) countSome(world, day, index);
  mishaps(world, day);
  const wrong = world.days.length - 1 - index === WRONG_CHART;
  if (index === world.days.length - 1) {
    world.steps.push(...buyToday(world, day), ...ordersNow(world, day), ...bookedAfter(day));
  }
  planned.visits.forEach(({ visit, uses }, n) => {
    const last = index === world.days.length - 1 && n === planned.visits.length - 1;
    const posted = {
      ...visit,
      ...(last ? { id: LAST_VISIT } : {}),
      ...scansOf(world, visit, uses),
    };
    if (wrong && n === 0) postForWrongChart(world, posted);
    for (const use of uses) issue(world, posted, use);
    world.steps.push({ date: day, kind: 'visit', key: `visit/${posted.id}`, payload: posted });
    if (!last) chargeVisit(world, posted);
  });
  review(world, day);
}

function postForWrongChart(world: World, right: VisitPayload): void {
  const id = demoId('visit', 'wrong chart');
  const restorations = right.restorations.map((each, i) => ({
    ...each,
    id: demoId('restoration', id, i),
  }));
  const visit = { ...right, id, chartReference: 'C-9999', restorations };
  const date = right.visitedOn;
  world.steps.push({ date, kind: 'visit', key: `visit/${id}`, payload: visit });
  const payload = { visitId: id, note: 'Entered for the wrong chart.' };
  world.steps.push({ date, kind: 'reverseVisit', key: `reverse-visit/${id}`, payload });
}

function issue(world: World, visit: VisitPayload, use: PlannedUse): void {
  const need = {
    ...use,
    room: visit.room,
    day: visit.visitedOn,
    chart: visit.chartReference,
    scannedLot: scannedLot(visit, use.consumable),
  };
  const missing = world.shelf.issue(need);
  if (missing === 0) return;
  const { consumable, room, chart } = need;
  world.shortfalls.push({ consumable, room, chart, usedOn: need.day, missing });
}

function scannedLot(visit: VisitPayload, consumable: string): string | undefined {
  if (!visit.scanned) return undefined;
  const id = consumableId(consumable);
  return visit.scanned.find((lot) => lot.consumableId === id)?.lotNumber;
}

/** Goods that came in serve what earlier visits lacked. */
function settle(world: World, day: IsoDate): void {
  for (const shortfall of world.shortfalls) {
    const { consumable, room, usedOn, chart, missing } = shortfall;
    const need = { consumable, dispensed: missing, room, day: usedOn, chart, late: true };
    if (world.shelf.usable(consumable, day) > 0) shortfall.missing = world.shelf.issue(need);
  }
  world.shortfalls = world.shortfalls.filter((shortfall) => shortfall.missing > 0);
}

const SCANNED_CATEGORIES = new Set(['Composite', 'Flowable composite', 'Adhesive', 'Anaesthetic']);

/** About every second syringe, bottle or cartridge is scanned; only what is surely there. */
function scansOf(
  world: World,
  visit: VisitPayload,
  uses: readonly PlannedUse[],
): { scanned?: LotRef[] } {
  const scanned = new Map<string, LotRef>();
  const eager = world.dice.chance(0.6);
  for (const { consumable, dispensed } of uses) {
    if (!SCANNED_CATEGORIES.has(consumableOf(consumable).category)) continue;
    if (!eager || !world.dice.chance(0.75) || scanned.has(consumable)) continue;
    const layer = world.shelf.first(consumable, visit.room, visit.visitedOn);
    if (!layer?.lot) continue;
    const enough = Math.max(
      6 * dispensed,
      4 * layer.content * Number(layer.dispensing === 'single-dose'),
    );
    if (world.shelf.reachable(layer, visit.room, visit.visitedOn) < enough) continue;
    scanned.set(consumable, { consumableId: consumableId(consumable), lotNumber: layer.lot });
  }
  return scanned.size > 0 ? { scanned: [...scanned.values()] } : {};
}
