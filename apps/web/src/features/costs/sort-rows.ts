import { micro } from '../../ui/drawn.js';
import type { CostRow } from './groups.js';

export const ROW_SORTS = ['name', 'restorations', 'p50', 'p90', 'max', 'retakes', 'total'] as const;
export type RowSort = (typeof ROW_SORTS)[number];

const VALUES: Readonly<Record<Exclude<RowSort, 'name'>, (row: CostRow) => bigint>> = {
  restorations: (row) => BigInt(row.restorations),
  p50: (row) => micro(row.p50),
  p90: (row) => micro(row.p90),
  max: (row) => micro(row.max),
  retakes: (row) => micro(row.retakeCost),
  total: (row) => micro(row.total),
};

/**
 * The report is one answer, so it is sorted here: the largest first, or as the service orders names
 * and months.
 */
export function sortRows(rows: readonly CostRow[], sort: RowSort): CostRow[] {
  return sort === 'name' ? [...rows] : largestFirst(rows, VALUES[sort]);
}

/** Rows with the same value stay in their order. */
export function largestFirst<Row>(rows: readonly Row[], value: (row: Row) => bigint): Row[] {
  return [...rows].sort((a, b) => {
    const [left, right] = [value(a), value(b)];
    return left === right ? 0 : left < right ? 1 : -1;
  });
}
