import {
  type CavityClass,
  cavityClassFits,
  formatTooth,
  type IsoTooth,
  isAnterior,
  parseSurfaces,
  proximalCount,
  type Reason,
  type Surface,
} from '#lib/dentition';
import { formatQuantity, type Quantity, quantityFromMicro } from '#lib/measure';
import {
  expandUsage,
  type PlannedRestoration,
  readRestoration,
  type TemplateOf,
} from '#lib/procedures';
import type { BookedRestoration } from './booked-visit.js';
import { chargeWhole } from './charge-whole.js';

/** A restoration that was recorded lately: what is booked without details is planned like these. */
export interface RecordedRestoration {
  readonly tooth: IsoTooth;
  readonly surfaces: string;
  readonly cavityClass: CavityClass | null;
  readonly reason: Reason;
  readonly shades: readonly string[];
  readonly cycles: number;
  readonly volumeMm3: Quantity;
  readonly depthMm: Quantity;
}

export interface PlanningContext {
  readonly templateOf: TemplateOf;
  /** The latest restorations by a template, the latest first; empty when there were none. */
  recordedOf(templateId: string): readonly RecordedRestoration[];
  isWhole(consumableId: string): boolean;
  /** Content of a single dose; null for what is not bought in doses. */
  doseOf(consumableId: string): Quantity | null;
}

/** What one such visit is planned to take of a consumable, whole single doses. */
export interface PlannedNeed {
  /** On average, and of the square: details that nobody said may turn out one way or another. */
  readonly mean: Quantity;
  /** In stock units, squared; a statistic, not an amount. */
  readonly meanSquare: number;
  /** The share of ways it may turn out in which it is needed at all. */
  readonly share: number;
}

export interface BookedPlan {
  readonly needs: ReadonlyMap<string, PlannedNeed>;
  /** Paste was planned, but nobody said the shade and no such restoration was ever recorded. */
  readonly shadeUnknown: boolean;
  /** In so many ways it may turn out; 1 when everything was said. */
  readonly ways: number;
  /** Chair time by the templates. */
  readonly minutes: number;
}

/** So many ways are enough to show what usually happens, and few enough to be quick. */
export const MOST_WAYS = 12;
/** People at the chair, as for a visit that says nothing else. */
const STAFF = 2;
const UPPER_FRONT = 21 as IsoTooth;
/** Stands for the shade that nobody can tell. */
const SHADE_UNKNOWN = 'shade unknown';

/**
 * What a booked visit will use by its templates. What nobody said of a restoration is taken from the
 * restorations last recorded by the same template, each as likely as the other; where there is none,
 * from an upper front tooth with one side. Throws when a template is not there.
 */
export function planBooked(
  restorations: readonly BookedRestoration[],
  context: PlanningContext,
): BookedPlan {
  const ways = waysOf(restorations, context);
  const sums = new Map<string, { total: bigint; squares: number; times: number }>();
  let shadeUnknown = false;
  let minutes = 0;
  for (let way = 0; way < ways; way += 1) {
    const planned = restorations.map((each, i) => asPlanned(each, context, way + i * 5));
    minutes = planned.reduce((sum, each) => sum + each.minutes, 0);
    for (const [id, amount] of chargedBy(planned, context)) {
      if (id === SHADE_UNKNOWN) {
        shadeUnknown = true;
        continue;
      }
      const sum = sums.get(id) ?? { total: 0n, squares: 0, times: 0 };
      const units = Number(amount) / 1_000_000;
      const squares = sum.squares + units * units;
      sums.set(id, { total: sum.total + amount, squares, times: sum.times + 1 });
    }
  }
  const needs = new Map<string, PlannedNeed>();
  for (const [id, { total, squares, times }] of sums) {
    const mean = quantityFromMicro((total + BigInt(ways) / 2n) / BigInt(ways));
    needs.set(id, { mean, meanSquare: squares / ways, share: times / ways });
  }
  return { needs, shadeUnknown, ways, minutes };
}

function waysOf(restorations: readonly BookedRestoration[], context: PlanningContext): number {
  const open = restorations.filter((each) => !allSaid(each, context));
  const known = open.map((each) => context.recordedOf(each.templateId).length);
  return Math.max(1, Math.min(MOST_WAYS, Math.max(0, ...known)));
}

function allSaid(each: BookedRestoration, context: PlanningContext): boolean {
  const shaded = each.shades.length > 0 || !asksForShade(each.templateId, context);
  return each.tooth !== null && each.surfaces !== null && each.reason !== null && shaded;
}

function asksForShade(templateId: string, { templateOf }: PlanningContext): boolean {
  return templateOf(templateId)?.lines.some((line) => line.consumableId === null) ?? false;
}

function asPlanned(
  said: BookedRestoration,
  context: PlanningContext,
  way: number,
): PlannedRestoration {
  const recorded = context.recordedOf(said.templateId);
  const like = recorded[way % Math.max(1, recorded.length)];
  const tooth = said.tooth ?? like?.tooth ?? UPPER_FRONT;
  const place = placeOf(said, like, tooth);
  const asRecorded = like !== undefined && place.asRecorded && said.size === null;
  const shades = [said.shades, like?.shades ?? []].find((list) => list.length > 0);
  const read = readRestoration(
    {
      templateId: said.templateId,
      tooth: formatTooth(tooth, 'iso'),
      surfaces: place.surfaces.join(''),
      cavityClass: place.cavityClass,
      size: said.size,
      reason: said.reason ?? like?.reason ?? 'decay',
      shades: asksForShade(said.templateId, context) ? (shades ?? [SHADE_UNKNOWN]) : [],
      cycles: like?.cycles ?? 1,
      ...(asRecorded
        ? { volumeMm3: formatQuantity(like.volumeMm3), depthMm: formatQuantity(like.depthMm) }
        : {}),
    },
    0,
    'iso',
    context.templateOf,
  );
  if (read.ok) return read.restoration;
  const [problem] = read.problems;
  throw new Error(`A booked restoration cannot be planned: ${problem?.field} ${problem?.message}`);
}

interface Place {
  readonly surfaces: readonly Surface[];
  readonly cavityClass: CavityClass | null;
  /** Surfaces and class are those of the recorded one, and so may its volume be. */
  readonly asRecorded: boolean;
}

function placeOf(
  said: BookedRestoration,
  like: RecordedRestoration | undefined,
  tooth: IsoTooth,
): Place {
  const surfaces = surfacesOn(tooth, said.surfaces);
  if (surfaces) {
    const { cavityClass } = said;
    if (cavityClass) return { surfaces, cavityClass, asRecorded: false };
    const fits =
      like !== undefined &&
      (like.cavityClass === null || cavityClassFits(tooth, surfaces, like.cavityClass).ok);
    if (fits) return { surfaces, cavityClass: like.cavityClass, asRecorded: true };
    return { surfaces, cavityClass: usualClass(tooth, surfaces), asRecorded: false };
  }
  const sameKind = like !== undefined && isAnterior(like.tooth) === isAnterior(tooth);
  const recorded = sameKind ? surfacesOn(tooth, like.surfaces) : undefined;
  if (recorded && like) {
    return { surfaces: recorded, cavityClass: like.cavityClass, asRecorded: true };
  }
  const usual: Surface[] = isAnterior(tooth) ? ['M'] : ['M', 'O'];
  return { surfaces: usual, cavityClass: usualClass(tooth, usual), asRecorded: false };
}

function surfacesOn(tooth: IsoTooth, text: string | null): readonly Surface[] | undefined {
  if (text === null) return undefined;
  const parsed = parseSurfaces(tooth, text);
  return parsed.ok ? parsed.surfaces : undefined;
}

/** The class that such surfaces usually have. */
function usualClass(tooth: IsoTooth, surfaces: readonly Surface[]): CavityClass {
  if (proximalCount(surfaces) > 0) {
    if (!isAnterior(tooth)) return 'II';
    return surfaces.includes('I') ? 'IV' : 'III';
  }
  return surfaces.some((each) => each === 'F' || each === 'L') ? 'V' : 'I';
}

function chargedBy(
  restorations: readonly PlannedRestoration[],
  context: PlanningContext,
): Map<string, bigint> {
  const known = (id: string) => id !== SHADE_UNKNOWN;
  const lines = expandUsage({
    restorations,
    staffCount: STAFF,
    isWhole: (id) => known(id) && context.isWhole(id),
  });
  const charged = chargeWhole(lines, (id) => (known(id) ? context.doseOf(id) : null));
  const total = new Map<string, bigint>();
  lines.forEach(({ consumableId }, i) => {
    total.set(consumableId, (total.get(consumableId) ?? 0n) + (charged[i] ?? 0n));
  });
  return total;
}
