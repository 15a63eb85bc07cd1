import type { CavityClass, IsoTooth, Reason, Surface } from '#lib/dentition';
import type { Quantity } from '#lib/measure';

/** What the amount of a template line is counted by. */
export const DRIVERS = [
  'visit',
  'staff member',
  'front segment or quadrant',
  'tooth',
  'restoration',
  'surface',
  'proximal surface',
  'layer',
  'mm3',
  'shade',
  'attempt',
  'cycle',
] as const;

export type Driver = (typeof DRIVERS)[number];

/** What belongs to the visit as a whole: two restorations that both name it use it once. */
export const VISIT_DRIVERS = ['visit', 'staff member', 'front segment or quadrant'] as const;

export type VisitDriver = (typeof VISIT_DRIVERS)[number];

export function isVisitDriver(driver: Driver): driver is VisitDriver {
  return VISIT_DRIVERS.some((each) => each === driver);
}

/** One version of a procedure template. A version never changes once it is written. */
export interface TemplateVersion {
  readonly templateId: string;
  readonly version: number;
  readonly name: string;
  /** Chair time planned for one restoration of this kind. */
  readonly minutes: number;
  /** Time of assistants planned for it. */
  readonly assistantMinutes: number;
  readonly layerThicknessMm: Quantity;
  readonly active: boolean;
  readonly lines: readonly TemplateLine[];
}

export interface TemplateLine {
  readonly lineNumber: number;
  /** Null: the line takes the shades chosen for the restoration. */
  readonly consumableId: string | null;
  readonly driver: Driver;
  /** Per unit of the driver: what ends up in the tooth. */
  readonly placed: Quantity;
  /** Per unit of the driver: what leaves the container; at least what is placed. */
  readonly dispensed: Quantity;
  /** Whether an attempt that is done again uses it again. */
  readonly everyAttempt: boolean;
  /** Counts only for restorations made for one of these reasons; null counts for all. */
  readonly reasons: readonly Reason[] | null;
  /** Whether one single dose may serve several restorations of a visit. */
  readonly sharesDose: boolean;
  /** Left out when the visit goes without anaesthetic. */
  readonly anaesthetic: boolean;
}

/** A planning value of class and size, a volume that was entered, or entered dimensions. */
export const VOLUME_SOURCES = ['planning value', 'entered', 'dimensions'] as const;

export type VolumeSource = (typeof VOLUME_SOURCES)[number];

/** A restoration as it is planned, with every default filled in. */
export interface PlannedRestoration {
  readonly tooth: IsoTooth;
  readonly surfaces: readonly Surface[];
  readonly cavityClass?: CavityClass;
  readonly reason: Reason;
  readonly template: TemplateVersion;
  readonly shades: readonly string[];
  readonly attempts: number;
  readonly cycles: number;
  readonly volumeMm3: Quantity;
  readonly volumeSource: VolumeSource;
  /** Set when the volume was worked out from them. */
  readonly lengthMm: Quantity | null;
  readonly widthMm: Quantity | null;
  readonly depthMm: Quantity;
  readonly minutes: number;
  readonly assistantMinutes: number;
}

/**
 * What a visit is planned to use of one consumable for one purpose. It belongs to a restoration
 * (`restoration` is set, `tooth` null), to a tooth (the other way round) or to the visit (neither).
 */
export interface PlannedLine {
  readonly key: string;
  /** Position in the list of restorations, from 0. */
  readonly restoration: number | null;
  readonly tooth: IsoTooth | null;
  /** From 1; a later one is a retake. */
  readonly attempt: number;
  readonly consumableId: string;
  readonly driver: Driver;
  readonly placed: Quantity;
  readonly dispensed: Quantity;
  /** Whether it may take its part of a single dose that other lines of the visit use too. */
  readonly sharesDose: boolean;
}
