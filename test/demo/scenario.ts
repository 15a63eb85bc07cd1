import type { IsoDate } from '#lib/platform';
import { kits } from './buying.js';
import { CATALOGUE } from './catalogue.js';
import { priceList } from './charging.js';
import { decimal } from './plan-usage.js';
import { PEOPLE, PLACES, type PlaceKey, SUPPLIERS, type SupplierKey } from './practice.js';
import { simulate } from './simulate.js';
import type { Step } from './steps.js';
import { TEMPLATES } from './templates.js';
import type { World } from './world.js';

export interface Scenario {
  readonly today: IsoDate;
  /** In the order in which they are done. */
  readonly steps: readonly Step[];
  /** How the simulated shelves stand in the end. */
  readonly world: World;
}

/** The demo book up to a day: the same day always makes the same book. */
export function buildScenario(today: IsoDate): Scenario {
  const world = simulate(today);
  const first = world.days[0]?.day ?? today;
  return { today, steps: [...masterData(world, first), ...world.steps], world };
}

function masterData(world: World, date: IsoDate): Step[] {
  const steps: Step[] = [];
  for (const { signInName } of PEOPLE) {
    steps.push({ date, kind: 'person', key: `person/${signInName}`, payload: { signInName } });
  }
  for (const supplier of Object.keys(SUPPLIERS) as SupplierKey[]) {
    steps.push({ date, kind: 'supplier', key: `supplier/${supplier}`, payload: { supplier } });
  }
  for (const place of Object.keys(PLACES) as PlaceKey[]) {
    steps.push({ date, kind: 'location', key: `location/${place}`, payload: { place } });
  }
  for (const { key: consumable, packs } of CATALOGUE) {
    const level = world.levels.get(consumable);
    const reorderAt = decimal(level?.at ?? 0);
    const reorderUpTo = decimal(level?.upTo ?? 0);
    const payload = { consumable, reorderAt, reorderUpTo };
    steps.push({ date, kind: 'consumable', key: `consumable/${consumable}`, payload });
    packs.forEach((_, pack) => {
      const key = `presentation/${consumable}/${pack}`;
      steps.push({ date, kind: 'presentation', key, payload: { consumable, pack } });
    });
  }
  steps.push(...kits(date));
  for (const { key: template } of TEMPLATES) {
    steps.push({ date, kind: 'template', key: `template/${template}`, payload: { template } });
  }
  return [...steps, ...priceList(world.today, date)];
}
