import {
  deliveryLine,
  type Item,
  openSmallBook,
  restoration,
  type SmallBook,
  visitBody,
} from '../book/book.js';
import { Dice } from '../demo/dice.js';
import type { TestService } from '../http/service.js';

/** The day on which the planning is asked: a Monday. */
export const TODAY = '2026-05-04';
const FIRST_DAY = '2025-11-03';
const LAST_DAY = '2026-04-30';
/** The first shade is not used from this day on. */
const SHADE_CHANGED = '2026-01-05';

export interface PlanningBook extends SmallBook {
  /** Bibs come in boxes of 50 as well; 40 of them are used up before goods come. */
  readonly bibBox: Item;
  /** The shade that took over from `paste`, which died out. */
  readonly newShade: Item;
  /** Usable for a week more only, and hardly used: it will expire. */
  readonly expiring: Item;
  readonly visits: readonly string[];
}

/** Half a year of invented visits, Monday to Thursday, the same each time. */
export async function openPlanningBook(
  service: TestService,
  prefix: string,
): Promise<PlanningBook> {
  const s = await openSmallBook(service, prefix);
  const { book } = s;
  const box = await book.presentation(s.bib.id, 'by-piece', 50, '1', {
    ...{ name: 'Box of 50', listPrice: '4', supplierId: s.supplier },
  });
  const bibBox = { id: s.bib.id, presentation: box };
  const newShade = await syringe(s, 'Dentine 3', '70');
  const expiring = await syringe(s, 'Enamel light', '81');
  const life = (expiresOn: string) => ({ expiresOn });
  await book.deliver(s.supplier, '2025-10-27', [
    deliveryLine(s.etchant, s.store, 2, '20', { lotNumber: 'E-1', ...life('2027-01-31') }),
    deliveryLine(s.adhesive, s.store, 2, '110', { lotNumber: 'A-1', ...life('2027-01-31') }),
    deliveryLine(s.paste, s.store, 1, '72', { lotNumber: 'P-1', ...life('2027-06-30') }),
    deliveryLine(s.strip, s.store, 4, '7'),
    deliveryLine(bibBox, s.store, 1, '4'),
    deliveryLine(newShade, s.store, 3, '70', { lotNumber: 'N-1', ...life('2027-06-30') }),
    deliveryLine(expiring, s.store, 1, '81', { lotNumber: 'X-1', ...life('2026-05-10') }),
  ]);
  const visits = await visitAll({ ...s, newShade, expiring });
  // Comes late: it settles the earliest shortfalls of bibs, not all of them.
  await book.deliver(s.supplier, '2026-03-02', [deliveryLine(bibBox, s.store, 1, '4')]);
  return { ...s, bibBox, newShade, expiring, visits };
}

async function syringe(s: SmallBook, shade: string, listPrice: string): Promise<Item> {
  const id = await s.book.consumable('Paste', 'composite', 'g', { shade });
  const more = { name: 'Syringe 4 g', listPrice, supplierId: s.supplier };
  return { id, presentation: await s.book.presentation(id, 'multi-use', 1, '4', more) };
}

async function visitAll(
  s: SmallBook & Pick<PlanningBook, 'newShade' | 'expiring'>,
): Promise<string[]> {
  const dice = new Dice('half a year of visits');
  const visits: string[] = [];
  for (const day of openDays(FIRST_DAY, LAST_DAY)) {
    const count = dice.chance(0.3) ? 2 : 1;
    for (let i = 0; i < count; i += 1) {
      const shade = day < SHADE_CHANGED ? s.paste : s.newShade;
      const usage = dice.chance(0.08) ? [{ consumableId: s.expiring.id, dispensed: '0.06' }] : [];
      const attempts = dice.chance(0.1) ? 2 : 1;
      const body = visitBody(s, {
        chartReference: `C-${visits.length}`,
        visitedOn: day,
        restorations: [restoration(s, { attempts, shades: [shade.id] })],
        usage,
      });
      visits.push((await s.book.done('POST', '/visits', body)).id ?? '');
    }
  }
  return visits;
}

/** Friday to Sunday the practice is closed, and over the turn of the year; both days included. */
function openDays(first: string, last: string): string[] {
  const days: string[] = [];
  for (let day = first; day <= last; day = nextDay(day)) {
    const weekday = new Date(`${day}T00:00:00Z`).getUTCDay();
    const closed = weekday === 0 || weekday > 4 || (day >= '2025-12-23' && day < '2026-01-05');
    if (!closed) days.push(day);
  }
  return days;
}

/** Visits to expect in so many days from `TODAY` on, at the pace of all that there were. */
export function visitsExpected(visits: number, days: number): number {
  const until = new Date(Date.parse(`${TODAY}T00:00:00Z`) + (days - 1) * 86_400_000);
  const ahead = openDays(TODAY, until.toISOString().slice(0, 10)).length;
  return (visits * ahead) / openDays(FIRST_DAY, LAST_DAY).length;
}

function nextDay(day: string): string {
  return new Date(Date.parse(`${day}T00:00:00Z`) + 86_400_000).toISOString().slice(0, 10);
}

export interface Forecast {
  readonly history: {
    readonly from: string;
    readonly to: string;
    readonly total: string;
    readonly demand: string;
    readonly knownDays: number;
    readonly days: readonly {
      day: string;
      issued: string;
      shortfall: string;
      retakes: string;
      oneOff: boolean;
    }[];
    readonly weeks: readonly { monday: string; demand: string }[];
  };
  readonly demandClass: string | null;
  readonly level: string;
  readonly diedOut: boolean;
  readonly origins: number;
  readonly methods: readonly { method: string; loss: string | null; chosen: boolean }[];
  readonly choice: string;
  readonly assumptions: readonly string[];
  readonly horizons: readonly {
    days: number;
    mean: string;
    deviation: string;
    quantiles: readonly { level: string; quantity: string }[];
  }[];
}

export interface Substitute {
  readonly kind: string;
  readonly consumable: { readonly id: string };
  readonly presentation: { readonly id: string } | null;
  readonly packPrice: string | null;
  readonly unitPrice: string | null;
  readonly spare: string;
  readonly note: string | null;
}

export interface Lead {
  readonly statedDays: number;
  readonly statedBy: string;
  readonly orders: number;
  readonly open: number;
  readonly assumed: string;
  readonly mean: string;
  readonly workingDays: readonly { days: number; chance: string }[];
  readonly fromToday: readonly { days: number; chance: string }[];
}

export interface Proposal {
  readonly consumable: { readonly id: string };
  readonly presentation: { readonly id: string; readonly minimumPacks: number } | null;
  readonly lead: Lead | null;
  readonly substitutes: readonly Substitute[];
  readonly use: readonly { level: string; quantity: string }[];
  readonly neededInDays: number | null;
  readonly wasteAfter: string;
  readonly before: { readonly stockOutChance: string };
  readonly reason: string;
  readonly packs: number;
  readonly added: number;
  readonly quantity: string;
  readonly total: string | null;
  readonly position: string;
  readonly reorderPoint: string;
  readonly orderUpTo: string;
  readonly sentence: string;
  readonly figures: readonly { name: string; value: string; unit: string }[];
  readonly flags: readonly string[];
  readonly bounds: readonly string[];
  readonly assumptions: readonly string[];
  readonly typedIn: {
    reorderAt: string | null;
    reorderUpTo: string | null;
    asksForOrder: boolean;
    packs: number | null;
  };
}

export interface Proposals {
  readonly asOf: string;
  readonly looked: number;
  readonly budgetLeft: string | null;
  readonly orders: readonly {
    supplier: { id: string; name: string } | null;
    status: string;
    goods: string;
    freight: string;
    total: string;
    choices: readonly string[];
    lines: readonly Proposal[];
  }[];
  readonly stuck: readonly Proposal[];
}

export function figure(proposal: Proposal, name: string): number {
  const found = proposal.figures.find((each) => each.name === name);
  if (!found) throw new Error(`The proposal has no figure ${name}`);
  return Number(found.value);
}
