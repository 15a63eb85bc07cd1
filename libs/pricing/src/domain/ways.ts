import type { Reason } from '#lib/dentition';

/** The ways in which the same work can be done. The reason alone decides what belongs where. */
export const WAYS = [
  'all in one visit',
  'insured first, cosmetic later',
  'insured only',
  'cosmetic only',
] as const;

export type WayKind = (typeof WAYS)[number];

export interface Way {
  readonly kind: WayKind;
  /** Positions of the restorations in the list, visit by visit. */
  readonly visits: readonly (readonly number[])[];
}

/**
 * The ways open to a list of restorations, given their reasons: decay, fracture and wear are what a
 * plan may pay for, cosmetic work stays by itself. Where there is only one kind, there is nothing to
 * take apart.
 */
export function waysOf(reasons: readonly Reason[]): Way[] {
  const all = [...reasons.keys()];
  const cosmetic = all.filter((i) => reasons[i] === 'cosmetic');
  const insured = all.filter((i) => reasons[i] !== 'cosmetic');
  const together: Way = { kind: 'all in one visit', visits: [all] };
  if (cosmetic.length === 0 || insured.length === 0) return [together];
  return [
    together,
    { kind: 'insured first, cosmetic later', visits: [insured, cosmetic] },
    { kind: 'insured only', visits: [insured] },
    { kind: 'cosmetic only', visits: [cosmetic] },
  ];
}
