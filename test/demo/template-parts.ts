import type { CavityClass, Reason } from '#lib/dentition';
import type { Driver } from '#lib/procedures';

export interface DemoLine {
  /** Null: the shades chosen for the restoration. */
  readonly consumable: string | null;
  readonly driver: Driver;
  readonly placed: string;
  readonly dispensed: string;
  readonly everyAttempt: boolean;
  readonly reasons: readonly Reason[] | null;
}

export interface DemoVersion {
  readonly minutes: number;
  readonly layerThicknessMm: string;
  readonly note: string | null;
  readonly lines: readonly DemoLine[];
}

export interface DemoTemplate {
  readonly key: string;
  readonly name: string;
  readonly cavityClass: CavityClass | null;
  readonly versions: readonly [DemoVersion, ...DemoVersion[]];
}

interface LineOptions {
  readonly again?: boolean;
  readonly reasons?: readonly Reason[];
}

export function line(
  consumable: string | null,
  driver: Driver,
  dispensed: number,
  placed = dispensed,
  options: LineOptions = {},
): DemoLine {
  return {
    consumable,
    driver,
    placed: String(placed),
    dispensed: String(dispensed),
    everyAttempt: options.again ?? false,
    reasons: options.reasons ?? null,
  };
}

const AGAIN = { again: true };
const INSURED = { reasons: ['decay', 'fracture'] as const };

/** What every visit takes, whatever is done. */
export const SET_UP: readonly DemoLine[] = [
  line('bib', 'visit', 1),
  line('gloves-m', 'staff member', 2),
  line('mask', 'staff member', 1),
  line('saliva-tip', 'visit', 1),
  line('suction-tip', 'visit', 1),
  line('barrier-film', 'visit', 4),
];

export const NUMBING: readonly DemoLine[] = [
  line('topical-gel', 'front segment or quadrant', 0.3, 0.2, INSURED),
  line('cartridge', 'front segment or quadrant', 1.2, 1.2, INSURED),
  line('needle', 'visit', 1, 1, INSURED),
];

export const BONDING: readonly DemoLine[] = [
  line('etch', 'tooth', 0.08, 0.06, AGAIN),
  line('etch-tip', 'visit', 1),
  line('adhesive', 'tooth', 0.035, 0.02, AGAIN),
  line('micro-applicator', 'tooth', 2, 2, AGAIN),
  line('light-sleeve', 'visit', 1),
];

export const CUTTING: readonly DemoLine[] = [
  line('diamond', 'tooth', 1, 1, AGAIN),
  line('dye', 'tooth', 0.04, 0.02, { reasons: ['decay'] }),
  line('cotton-roll', 'front segment or quadrant', 4),
];

/** Grams per cubic millimetre: 2 g/cm3 with 2.5 % shrinkage, and what sticks to the instrument. */
export const PASTE_FROM_SYRINGE = line(null, 'mm3', 0.0032, 0.002051, AGAIN);
/** From a capsule hardly anything is lost on the way; what stays in it is charged anyway. */
export const PASTE_FROM_CAPSULE = line(null, 'mm3', 0.0023, 0.002051, AGAIN);

export const FRONT_FINISH: readonly DemoLine[] = [
  line('finishing-bur', 'restoration', 1, 1, AGAIN),
  line('disc-medium', 'visit', 1),
  line('disc-fine', 'visit', 1),
  line('articulating', 'visit', 1),
];

export const BACK_FINISH: readonly DemoLine[] = [
  line('finishing-bur', 'restoration', 1, 1, AGAIN),
  line('polisher', 'visit', 1),
  line('articulating', 'visit', 2),
];

export const HIGH_GLOSS: readonly DemoLine[] = [
  line('disc-superfine', 'visit', 1),
  line('polishing-paste', 'visit', 0.12, 0.05),
];

/** Where a shape is built up, not only filled. */
export const SHAPING: readonly DemoLine[] = [line('disc-coarse', 'visit', 1)];

/** For every side that touches a neighbour. */
export const NEIGHBOUR: readonly DemoLine[] = [
  line('clear-strip', 'proximal surface', 1, 1, AGAIN),
  line('wedge-small', 'proximal surface', 1, 1, AGAIN),
  line('finishing-strip', 'proximal surface', 1, 1, AGAIN),
];
