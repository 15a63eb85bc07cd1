import { daysBetween, type IsoDate } from '#lib/platform';
import { CATALOGUE } from './catalogue.js';
import { Dice } from './dice.js';
import { type Micro, micro, type PlannedUse, planUsage } from './plan-usage.js';
import type { RoomKey, SupplierKey } from './practice.js';
import { Shelf } from './shelf.js';
import type { Step, VisitPayload } from './steps.js';
import { visitsOf } from './visits.js';

export interface PlannedDay {
  readonly day: IsoDate;
  readonly visits: readonly {
    readonly visit: VisitPayload;
    readonly uses: readonly PlannedUse[];
  }[];
}

export interface Order {
  readonly supplier: SupplierKey;
  readonly ordered: IsoDate;
  readonly arrives: IsoDate;
  readonly lines: readonly { readonly consumable: string; readonly packs: number }[];
}

export interface OpenShortfall {
  readonly consumable: string;
  readonly room: RoomKey;
  readonly usedOn: IsoDate;
  readonly chart: string;
  missing: Micro;
}

export interface Level {
  readonly at: Micro;
  readonly upTo: Micro;
}

/** Everything the simulation knows on the way; `steps` is what it is for. */
export interface World {
  readonly today: IsoDate;
  readonly days: readonly PlannedDay[];
  readonly levels: ReadonlyMap<string, Level>;
  readonly dice: Dice;
  readonly shelf: Shelf;
  readonly steps: Step[];
  /** Lot numbers given so far, with their expiry: `consumable/lot`. */
  readonly lots: Map<string, IsoDate | null>;
  readonly references: Set<string>;
  /** Charts of which the practice was told what is left of the plan. */
  readonly told: Set<string>;
  orders: Order[];
  shortfalls: OpenShortfall[];
}

export function newWorld(today: IsoDate, workdays: readonly IsoDate[]): World {
  const days = workdays.map((day, i): PlannedDay => {
    const visits = visitsOf({ day, secondVersions: i >= workdays.length / 2 });
    return { day, visits: visits.map((visit) => ({ visit, uses: planUsage(visit) })) };
  });
  return {
    today,
    days,
    levels: levelsOf(days),
    dice: new Dice(`world ${today}`),
    shelf: new Shelf(),
    steps: [],
    lots: new Map(),
    references: new Set(),
    told: new Set(),
    orders: [],
    shortfalls: [],
  };
}

export function daysLeft(world: World, day: IsoDate): number {
  return daysBetween(day, world.today);
}

const WEEKS = [3, 8] as const;

/** Reorder points from what the visits use per week, as a practice would set them: round figures. */
function levelsOf(days: readonly PlannedDay[]): Map<string, Level> {
  const used = new Map<string, Micro>();
  for (const { visits } of days) {
    for (const { consumable, dispensed } of visits.flatMap((v) => v.uses)) {
      used.set(consumable, (used.get(consumable) ?? 0) + chargedOf(consumable, dispensed));
    }
  }
  return new Map(
    CATALOGUE.map((row): [string, Level] => {
      if (row.fixed) return [row.key, { at: micro(row.fixed[0]), upTo: micro(row.fixed[1]) }];
      const perWeek = (used.get(row.key) ?? 0) / (days.length / 5);
      const [at, upTo] = row.weeks ?? WEEKS;
      const [pack] = row.packs;
      // Each room has a container open: what is left in the other room's is of no use here.
      const others = pack.dispensing === 'multi-use' ? micro(pack.content) : 0;
      const low = roundFigure(perWeek * at + others);
      return [row.key, { at: low, upTo: Math.max(roundFigure(perWeek * upTo), low * 1.5) }];
    }),
  );
}

const DOSES = new Map(
  CATALOGUE.filter((row) => row.packs[0].dispensing === 'single-dose').map((row) => [
    row.key,
    micro(row.packs[0].content),
  ]),
);

function chargedOf(consumable: string, dispensed: Micro): Micro {
  const dose = DOSES.get(consumable);
  return dose === undefined ? dispensed : Math.ceil(dispensed / dose) * dose;
}

/** Two digits, in whole units from ten on. */
function roundFigure(amount: Micro): Micro {
  if (amount <= 0) return micro(1);
  const step = Math.max(10 ** (Math.floor(Math.log10(amount)) - 1), micro(0.1));
  const rounded = Math.ceil(amount / step) * step;
  return rounded >= micro(3) ? Math.ceil(rounded / micro(1)) * micro(1) : rounded;
}
