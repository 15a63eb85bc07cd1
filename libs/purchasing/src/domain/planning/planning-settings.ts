import type { ServiceMeasure } from '../policy/index.js';

/** What a practice wants of its ordering. Decimals are texts, as they are stored and sent. */
export interface PlanningSettings {
  readonly serviceMeasure: ServiceMeasure;
  readonly serviceLevel: string;
  /** Days between two looks at what to order. */
  readonly reviewDays: number;
  /** Wanted chance that what is ordered is used before it expires. */
  readonly expiryCertainty: string;
  /** What keeping goods for a year costs, as a share of their price. */
  readonly carryingRate: string;
  /** What a line of an order costs in work, where the supplier's terms say nothing. */
  readonly orderCost: string;
  /** Working days until a delivery, where the supplier's terms say nothing. */
  readonly leadDays: number;
  readonly leaveOutRetakes: boolean;
}

/** Until somebody decides otherwise; common practice, no source. */
export const PLAIN_SETTINGS: PlanningSettings = {
  serviceMeasure: 'cycle service',
  serviceLevel: '0.95',
  reviewDays: 7,
  expiryCertainty: '0.9',
  carryingRate: '0.2',
  orderCost: '5.00',
  leadDays: 3,
  leaveOutRetakes: false,
};

/** What differs for one consumable; null is as the practice has it, or as it is reckoned. */
export interface ConsumablePlanning {
  readonly serviceMeasure: ServiceMeasure | null;
  readonly serviceLevel: string | null;
  readonly reviewDays: number | null;
  readonly expiryCertainty: string | null;
  readonly reorderAt: string | null;
  readonly orderUpTo: string | null;
  /** The most that fits, what is there and on its way included. */
  readonly shelfRoom: string | null;
  readonly note: string | null;
}

export const NOTHING_OWN: ConsumablePlanning = {
  serviceMeasure: null,
  serviceLevel: null,
  reviewDays: null,
  expiryCertainty: null,
  reorderAt: null,
  orderUpTo: null,
  shelfRoom: null,
  note: null,
};

/** The settings of the practice with what the consumable has of its own put over them. */
export function inForce(practice: PlanningSettings, own: ConsumablePlanning): PlanningSettings {
  const { serviceMeasure, serviceLevel } = own;
  const service =
    serviceMeasure === null || serviceLevel === null ? {} : { serviceMeasure, serviceLevel };
  return {
    ...practice,
    ...service,
    reviewDays: own.reviewDays ?? practice.reviewDays,
    expiryCertainty: own.expiryCertainty ?? practice.expiryCertainty,
  };
}

/** Monday first, as ISO 8601 counts them. */
export const WEEKDAYS = [
  'monday',
  'tuesday',
  'wednesday',
  'thursday',
  'friday',
  'saturday',
  'sunday',
] as const;
export type Weekday = (typeof WEEKDAYS)[number];

/** What a supplier asks for; null is as the practice has it, or that there is no such limit. */
export interface SupplyTerms {
  readonly leadDays: number | null;
  readonly orderCost: string | null;
  readonly minimumOrder: string | null;
  readonly freight: string;
  readonly freeFreightFrom: string | null;
  readonly workingDays: readonly Weekday[];
  /** Days on which it is closed besides, the earliest first; they do not overlap. */
  readonly closures: readonly Closure[];
}

/** Both days included. */
export interface Closure {
  readonly firstDay: string;
  readonly lastDay: string;
  readonly note: string | null;
}

export const PLAIN_TERMS: SupplyTerms = {
  leadDays: null,
  orderCost: null,
  minimumOrder: null,
  freight: '0.00',
  freeFreightFrom: null,
  workingDays: ['monday', 'tuesday', 'wednesday', 'thursday', 'friday'],
  closures: [],
};

export const DISCOUNTS = ['all units', 'incremental'] as const;
export type Discount = (typeof DISCOUNTS)[number];

/** How a presentation is sold; without a price list at the price last paid, else its list price. */
export interface PresentationTerms {
  readonly minimumPacks: number;
  /** all units: every pack at the price reached; incremental: only the packs beyond a break. */
  readonly discount: Discount;
  /** From 1 pack upwards, each price lower than the one before; empty without a price list. */
  readonly prices: readonly { readonly fromPacks: number; readonly packPrice: string }[];
}

export const PLAIN_PRESENTATION: PresentationTerms = {
  minimumPacks: 1,
  discount: 'all units',
  prices: [],
};
