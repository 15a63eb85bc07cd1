import type { CavityClass, CavitySize, Reason } from '#lib/dentition';
import { consumableId } from './catalogue.js';
import { Dice } from './dice.js';

const UPPER_FRONT = ['13', '12', '11', '21', '22', '23'] as const;
const LOWER_FRONT = ['33', '32', '31', '41', '42', '43'] as const;
const BACK = [
  ...['14', '15', '16', '17', '24', '25', '26', '27'],
  ...['34', '35', '36', '37', '44', '45', '46', '47'],
] as const;
const SIDE_BY_SIDE = [
  ['11', '21'],
  ['12', '11'],
  ['21', '22'],
  ['22', '23'],
] as const;

/** The paste that suits a patient is the same at every visit. */
export interface Patient {
  readonly chart: string;
  readonly tone: 2 | 3 | 4;
  readonly bleached: boolean;
}

export function patient(number: number): Patient {
  const dice = new Dice(`patient ${number}`);
  const tone = dice.weighted<2 | 3 | 4>([
    [45, 2],
    [38, 3],
    [17, 4],
  ]);
  return { chart: `C-${number}`, tone, bleached: dice.chance(0.06) };
}

export interface Work {
  readonly template: string;
  readonly tooth: string;
  readonly surfaces: string;
  readonly cavityClass?: CavityClass;
  readonly size: CavitySize;
  readonly reason: Reason;
  readonly shades: string[];
}

function frontTooth(dice: Dice): string {
  return dice.chance(0.78) ? dice.pick(UPPER_FRONT) : dice.pick(LOWER_FRONT);
}

function sizeOf(dice: Dice): CavitySize {
  return dice.weighted<CavitySize>([
    [35, 'small'],
    [48, 'medium'],
    [17, 'large'],
  ]);
}

function bodyOf(who: Patient): string {
  return who.bleached ? 'bleached' : `body${who.tone}`;
}

/** One shade, or dentine and enamel under and over each other. */
function layered(dice: Dice, who: Patient, shades: number): string[] {
  const enamel = dice.weighted([
    [4, 'enamel-light'],
    [5, 'enamel-neutral'],
    [2, 'enamel-warm'],
  ]);
  const chosen =
    shades === 1
      ? [dice.chance(0.08) ? 'body1' : bodyOf(who)]
      : [`dentine${who.tone}`, enamel, bodyOf(who)].slice(0, shades);
  return chosen.map(consumableId);
}

type Maker = (dice: Dice, who: Patient) => readonly Work[];

const frontSide: Maker = (dice, who) => [
  {
    template: 'front-side',
    tooth: frontTooth(dice),
    surfaces: dice.pick(['M', 'D', 'ML', 'DL', 'MF', 'DF']),
    cavityClass: 'III',
    size: sizeOf(dice),
    reason: 'decay',
    shades: layered(dice, who, 1),
  },
];

const frontCorner: Maker = (dice, who) => [
  {
    template: 'front-corner',
    tooth: frontTooth(dice),
    surfaces: dice.pick(['MIF', 'DIF', 'MIFL', 'DIL']),
    cavityClass: 'IV',
    size: sizeOf(dice),
    reason: dice.chance(0.8) ? 'fracture' : 'decay',
    shades: layered(dice, who, dice.int(2, 3)),
  },
];

const neck: Maker = (dice, who) => [
  {
    template: 'neck',
    tooth: dice.chance(0.4) ? frontTooth(dice) : dice.pick(BACK),
    surfaces: 'F',
    cavityClass: 'V',
    size: sizeOf(dice),
    reason: dice.chance(0.55) ? 'decay' : 'wear',
    shades: layered(dice, who, 1),
  },
];

const backOne: Maker = (dice, who) => [
  {
    template: 'back-one',
    tooth: dice.pick(BACK),
    surfaces: dice.pick(['O', 'O', 'OF', 'OL']),
    cavityClass: 'I',
    size: sizeOf(dice),
    reason: 'decay',
    shades: [consumableId(`capsule${who.tone}`)],
  },
];

const backSide: Maker = (dice, who) => [
  {
    template: 'back-side',
    tooth: dice.pick(BACK),
    surfaces: dice.pick(['MO', 'OD', 'OD', 'MOD']),
    cavityClass: 'II',
    size: sizeOf(dice),
    reason: dice.chance(0.85) ? 'decay' : 'fracture',
    shades: [consumableId(`capsule${who.tone}`)],
  },
];

const backDeep: Maker = (dice) => [
  {
    template: 'back-deep',
    tooth: dice.pick(BACK),
    surfaces: dice.pick(['MO', 'OD', 'MOD']),
    cavityClass: 'II',
    size: sizeOf(dice),
    reason: 'decay',
    shades: [],
  },
];

const edge: Maker = (dice, who) => {
  const count = dice.weighted([
    [50, 1],
    [35, 2],
    [15, 4],
  ]);
  const teeth =
    count === 1 ? [frontTooth(dice)] : count === 2 ? ['11', '21'] : UPPER_FRONT.slice(1, 5);
  const shades = layered(dice, who, dice.int(1, 2));
  const surfaces = dice.pick(['I', 'IF']);
  const size = sizeOf(dice);
  return teeth.map((tooth) => ({
    template: 'edge',
    tooth,
    surfaces,
    cavityClass: 'VI' as const,
    size,
    reason: 'cosmetic' as const,
    shades,
  }));
};

const gap: Maker = (dice, who) => {
  const [left, right] = dice.pick(SIDE_BY_SIDE);
  const shades = layered(dice, who, dice.int(1, 2));
  const one = { template: 'gap', size: 'small', reason: 'cosmetic', shades } as const;
  const inner = left === '11' && right === '21' ? 'MF' : 'DF';
  return [
    { ...one, tooth: left, surfaces: left === '12' ? 'MF' : inner },
    { ...one, tooth: right, surfaces: 'MF' },
  ];
};

const veneer: Maker = (dice, who) => {
  const teeth = dice.pick([['11'], ['21'], ['11', '21'], ['12', '11', '21', '22']]);
  const shades = layered(dice, who, 3);
  return teeth.map((tooth) => ({
    template: 'veneer',
    tooth,
    surfaces: 'IF',
    size: sizeOf(dice),
    reason: 'cosmetic' as const,
    shades,
  }));
};

const wear: Maker = (dice, who) => {
  const shades = layered(dice, who, 1);
  const teeth = dice.pick([['31', '41'], ['32', '31', '41', '42'], ['11'], ['13'], ['23', '13']]);
  return teeth.map((tooth) => ({
    template: 'wear',
    tooth,
    surfaces: dice.chance(0.5) ? 'I' : 'IL',
    cavityClass: 'VI' as const,
    size: sizeOf(dice),
    reason: 'wear' as const,
    shades,
  }));
};

const repair: Maker = (dice, who) => [
  {
    template: 'repair',
    tooth: frontTooth(dice),
    surfaces: 'F',
    size: 'small',
    reason: dice.chance(0.6) ? 'fracture' : 'cosmetic',
    shades: layered(dice, who, 1),
  },
];

const whiteSpot: Maker = (dice) =>
  dice.pick([['11', '21'], ['21'], ['11', '12'], ['22']]).map((tooth) => ({
    template: 'white-spot',
    tooth,
    surfaces: 'F',
    size: 'small' as const,
    reason: 'cosmetic' as const,
    shades: [],
  }));

/** Work that a plan usually pays for, and work that the patient wants for looks. */
export const INSURED: readonly (readonly [number, Maker])[] = [
  [20, frontSide],
  [14, frontCorner],
  [15, neck],
  [15, backOne],
  [22, backSide],
  [6, backDeep],
  [4, repair],
  [6, wear],
];

export const COSMETIC: readonly (readonly [number, Maker])[] = [
  [34, edge],
  [24, gap],
  [20, veneer],
  [8, whiteSpot],
  [14, repair],
];
