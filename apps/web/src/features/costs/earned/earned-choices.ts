export const CONTRIBUTION_SORTS = [
  ...(['restorations', 'income', 'material'] as const),
  ...(['contribution', 'hour', 'p10', 'p50', 'p90'] as const),
] as const;
export type ContributionSort = (typeof CONTRIBUTION_SORTS)[number];

/** Of what supplies are a share. */
export const SHARE_BASES = ['fees', 'income'] as const;
export type ShareBase = (typeof SHARE_BASES)[number];
