/** Why a restoration is made: caries, a broken tooth or filling, loss of substance, or looks. */
export const REASONS = ['decay', 'fracture', 'wear', 'cosmetic'] as const;

export type Reason = (typeof REASONS)[number];
