export const CHAIR_TIME_SORTS = ['restorations', 'minutes', 'cost'] as const;
export type ChairTimeSort = (typeof CHAIR_TIME_SORTS)[number];
