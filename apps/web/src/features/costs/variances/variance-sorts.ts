export const VARIANCE_SORTS = [
  ...(['restorations', 'standard', 'price', 'usage'] as const),
  ...(['actual', 'difference', 'waste', 'retakes'] as const),
] as const;
export type VarianceSort = (typeof VARIANCE_SORTS)[number];
