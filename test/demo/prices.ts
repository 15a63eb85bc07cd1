import type { Reason } from '#lib/dentition';
import type { IsoDate } from '#lib/platform';

/** What the practice asks for, in codes of its own; all of it is invented. */
export interface DemoFee {
  readonly code: string;
  readonly name: string;
  readonly feeClass: 'Fillings' | 'Looks';
  readonly template: string;
  readonly reason: Reason | null;
  /** When the book begins, and after the practice looked at its prices again. */
  readonly fees: readonly [before: DemoAmount, after: DemoAmount];
}

export type DemoAmount =
  | { readonly fee: string }
  | { readonly points: string; readonly pointValue: string; readonly factor: string };

const fees = (before: number, after: number): DemoFee['fees'] => [
  { fee: before.toFixed(2) },
  { fee: after.toFixed(2) },
];

function fee(
  code: string,
  name: string,
  of: readonly [DemoFee['feeClass'], template: string, reason?: Reason],
  amounts: DemoFee['fees'],
): DemoFee {
  const [feeClass, template, reason = null] = of;
  return { code, name, feeClass, template, reason, fees: amounts };
}

/** White spots have no fee: what is asked for them is agreed each time. */
export const FEES: readonly DemoFee[] = [
  fee('TL-11', 'Front filling, between teeth', ['Fillings', 'front-side'], fees(118, 124)),
  fee('TL-12', 'Front corner', ['Fillings', 'front-corner'], fees(232, 245)),
  fee(
    'TL-13',
    'Neck filling',
    ['Fillings', 'neck'],
    // A tariff of the practice's own: points x value of a point x factor.
    [
      { points: '84', pointValue: '0.95', factor: '1.3' },
      { points: '84', pointValue: '0.99', factor: '1.3' },
    ],
  ),
  fee('TL-21', 'Back filling, one surface', ['Fillings', 'back-one'], fees(92, 97)),
  fee('TL-22', 'Back filling, two or more', ['Fillings', 'back-side'], fees(158, 166)),
  fee('TL-23', 'Back filling, one layer', ['Fillings', 'back-deep'], fees(139, 145)),
  fee('TL-31', 'Worn edge', ['Fillings', 'wear'], fees(148, 155)),
  fee('TL-32', 'Repair of a filling', ['Fillings', 'repair', 'fracture'], fees(82, 86)),
  fee('TL-41', 'Edge for looks', ['Looks', 'edge'], fees(185, 195)),
  fee('TL-42', 'Gap, per tooth', ['Looks', 'gap'], fees(245, 260)),
  fee('TL-43', 'Direct veneer', ['Looks', 'veneer'], fees(410, 435)),
  fee('TL-44', 'Polish and repair for looks', ['Looks', 'repair', 'cosmetic'], fees(105, 112)),
];

export interface DemoTerm {
  readonly code?: string;
  readonly feeClass?: string;
  readonly allowedFee?: string;
  readonly alternateFee?: string;
  readonly coverage?: string;
}

export interface DemoPlan {
  readonly name: string;
  readonly inNetwork: boolean;
  readonly deductible: string;
  readonly yearlyMaximum: string;
  readonly feeCeiling: 'never' | 'non-covered' | 'exhausted' | 'both';
  readonly ceilingSource: string;
  readonly downgradeBilled: boolean;
  readonly terms: readonly DemoTerm[];
}

/** Invented plans; what they say differs from contract to contract and from law to law. */
export const PLANS = {
  larkfield: {
    name: 'Larkfield Dental Plan',
    inNetwork: true,
    deductible: '50',
    yearlyMaximum: '1200',
    feeCeiling: 'non-covered',
    ceilingSource: 'Invented for the demo: contract with the plan, section 7 on other work',
    downgradeBilled: true,
    terms: [
      { feeClass: 'Fillings', coverage: '0.8' },
      { code: 'TL-11', allowedFee: '102' },
      { code: 'TL-12', allowedFee: '205' },
      { code: 'TL-13', allowedFee: '88' },
      { code: 'TL-21', allowedFee: '84' },
      { code: 'TL-22', allowedFee: '140', alternateFee: '98' },
      { code: 'TL-23', allowedFee: '122', alternateFee: '98' },
      { code: 'TL-32', allowedFee: '74' },
      { code: 'TL-43', allowedFee: '395' },
    ],
  },
  pinewater: {
    name: 'Pinewater Health Cover',
    inNetwork: false,
    deductible: '100',
    yearlyMaximum: '800',
    feeCeiling: 'never',
    ceilingSource: 'Invented for the demo: no contract with this plan, so that no fee is bound',
    downgradeBilled: true,
    terms: [
      { feeClass: 'Fillings', coverage: '0.6' },
      { code: 'TL-12', allowedFee: '190' },
      { code: 'TL-22', allowedFee: '135' },
    ],
  },
} as const satisfies Record<string, DemoPlan>;

export type PlanKey = keyof typeof PLANS;

export interface DemoRate {
  readonly yearlyCost: string;
  readonly practicalMinutes: number;
  readonly assistantPracticalMinutes: number;
  readonly assistantRate: string;
  readonly note: string;
}

/** Two chairs: ten hours on about 240 days, nine tenths of which can really be worked. */
export const RATES: readonly [before: DemoRate, after: DemoRate] = [
  {
    yearlyCost: '364000',
    practicalMinutes: 259_200,
    assistantPracticalMinutes: 270_000,
    assistantRate: '0.52',
    note: 'Rent, equipment, dentists and energy of two chairs, without consumables.',
  },
  {
    yearlyCost: '378000',
    practicalMinutes: 259_200,
    assistantPracticalMinutes: 270_000,
    assistantRate: '0.55',
    note: 'With the new rent.',
  },
];

export interface ChargeLine {
  readonly restorationId: string;
  readonly plan?: PlanKey;
  readonly fee?: string;
  /** Where the plan paid something else than its terms say. */
  readonly stated?: {
    readonly planPays: string;
    readonly patientPays: string;
    readonly writeOff: string;
  };
}

export interface BalancePayload {
  readonly plan: PlanKey;
  readonly chartReference: string;
  readonly asOf: IsoDate;
  readonly deductibleLeft: string;
  readonly maximumLeft: string;
}
