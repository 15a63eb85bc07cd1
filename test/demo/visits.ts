import type { IsoDate } from '#lib/platform';
import { consumableId } from './catalogue.js';
import { Dice, demoId } from './dice.js';
import { COSMETIC, INSURED, type Patient, patient, type Work } from './patients.js';
import { DENTISTS, type DentistName, type RoomKey } from './practice.js';
import type { DemoRestoration, DemoUsage, VisitPayload } from './steps.js';
import { templateId, templateOf } from './templates.js';

const FIRST_CHART = 1001;
const CHARTS = 1650;
const FRONT_TEMPLATES = new Set(['front-side', 'front-corner', 'edge', 'gap', 'veneer']);

/** The second dentist does more of what is done for looks. */
const KINDS = {
  dentist: [
    [66, 'insured'],
    [14, 'cosmetic'],
    [20, 'both'],
  ],
  dentist2: [
    [42, 'insured'],
    [35, 'cosmetic'],
    [23, 'both'],
  ],
} as const;

export interface DayOfVisits {
  readonly day: IsoDate;
  /** Whether the second versions of the templates are in use. */
  readonly secondVersions: boolean;
}

/** The visits of one day, before anything is said about stock. */
export function visitsOf({ day, secondVersions }: DayOfVisits): VisitPayload[] {
  const dice = new Dice(`visits ${day}`);
  const swapped = dice.chance(0.08);
  const seen = new Set<string>();
  const visits: VisitPayload[] = [];
  for (const dentist of DENTISTS) {
    const count = dice.weighted([
      [2, 4],
      [4, 5],
      [4, 6],
      [2, 7],
      [0.5, 8],
    ]);
    const room: RoomKey = (dentist === 'dentist') !== swapped ? 'room1' : 'room2';
    for (let n = 1; n <= count; n += 1) {
      const who = somebody(dice, seen);
      const id = demoId('visit', day, dentist, n);
      const works = workOf(dice, who, dentist);
      visits.push({
        id,
        chartReference: who.chart,
        visitedOn: day,
        dentist,
        room,
        staffCount: dice.chance(0.07) ? 3 : 2,
        ...(dice.chance(0.03) ? { costShareKey: 'minutes' as const } : {}),
        restorations: works.map((work, i) => restorationOf(dice, work, secondVersions, id, i)),
        ...extrasOf(dice, works),
      });
    }
  }
  return visits;
}

function somebody(dice: Dice, seen: Set<string>): Patient {
  for (;;) {
    const who = patient(FIRST_CHART + Math.floor(CHARTS * dice.next() ** 1.25));
    if (seen.has(who.chart)) continue;
    seen.add(who.chart);
    return who;
  }
}

/** One to five restorations; each tooth once. */
function workOf(dice: Dice, who: Patient, dentist: DentistName): Work[] {
  const kind = dice.weighted(KINDS[dentist]);
  const works: Work[] = [];
  const add = (made: readonly Work[]) => {
    const taken = new Set(works.map((work) => work.tooth));
    works.push(...made.filter((work) => !taken.has(work.tooth)));
  };
  if (kind !== 'cosmetic') {
    const count = dice.weighted([
      [70, 1],
      [24, 2],
      [6, 3],
    ]);
    for (let n = 0; n < count; n += 1) add(dice.weighted(INSURED)(dice, who));
  }
  if (kind !== 'insured') add(dice.weighted(COSMETIC)(dice, who));
  return works;
}

function restorationOf(
  dice: Dice,
  work: Work,
  secondVersions: boolean,
  visitId: string,
  index: number,
): DemoRestoration {
  const template = templateOf(work.template);
  const again = FRONT_TEMPLATES.has(work.template) && dice.chance(0.026);
  const cycles = work.template === 'white-spot' ? dice.int(1, 3) : 1;
  const minutes = template.versions[0].minutes + 5 * dice.int(-2, 3);
  return {
    id: demoId('restoration', visitId, index),
    tooth: work.tooth,
    surfaces: work.surfaces,
    ...(work.cavityClass ? { cavityClass: work.cavityClass } : {}),
    size: work.size,
    reason: work.reason,
    templateId: templateId(work.template),
    templateVersion: secondVersions ? template.versions.length : 1,
    ...(work.shades.length > 0 ? { shades: work.shades } : {}),
    ...(again ? { attempts: 2 } : {}),
    ...(cycles > 1 ? { cycles } : {}),
    ...(work.template === 'gap' ? { volumeMm3: String(dice.int(12, 24)) } : {}),
    ...(work.template === 'back-one' && dice.chance(0.3) ? { depthMm: '4' } : {}),
    ...(dice.chance(0.25) ? { minutes } : {}),
  };
}

/** What was used besides the plan; now and then. */
function extrasOf(dice: Dice, works: readonly Work[]): { usage?: DemoUsage[] } {
  const usage: DemoUsage[] = [];
  if (dice.chance(0.3)) usage.push(used('gloves-s', '2'));
  if (dice.chance(0.02)) usage.push(used('cotton-roll', '2'));
  if (works.some((w) => w.reason === 'wear') && dice.chance(0.3)) {
    usage.push({ restoration: 0, ...used('desensitiser', '0.05') });
  }
  if (works.some((w) => w.template === 'front-corner') && dice.chance(0.05)) {
    usage.push({ restoration: 0, ...used('flow3', '0.04') });
  }
  return usage.length > 0 ? { usage } : {};
}

function used(key: string, amount: string): Omit<DemoUsage, 'restoration'> {
  return { consumableId: consumableId(key), placed: amount, dispensed: amount };
}
