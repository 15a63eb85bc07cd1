import type { IsoDate } from '#lib/platform';
import type { CategoryCost, Cell, Kind } from './cost-groups.js';
import { readCosts, type Width } from './spread.js';

/** A row of packed costs, its arrays as PostgreSQL's array_send writes them. */
export interface PackedSpan {
  readonly firstDay: IsoDate;
  readonly kinds: Buffer;
  readonly widths: Buffer;
  readonly restorations: Buffer;
  /** Visits as the rows count them, and as their total does. */
  readonly rowVisits: Buffer;
  readonly allVisits: Buffer;
  readonly ownCosts: Buffer;
  readonly sharedCosts: Buffer;
  readonly retakeCosts: Buffer;
  readonly costs: Buffer;
  readonly categoryKinds: Buffer;
  readonly categories: Buffer;
  readonly categoryCosts: Buffer;
}

const HEADER = 20; // of one dimension: dimensions, flags, type, length, first index
const LENGTH = 4; // before each element

/** Takes every cell of a span whose kind is known by its number. */
export function forEachCell(
  span: PackedSpan,
  kinds: ReadonlyMap<number, Kind>,
  take: (cell: Cell) => void,
): void {
  const month = span.firstDay.slice(0, 7);
  let at = 0;
  for (let n = 0; n < count(span.kinds, 4); n += 1) {
    const kind = kinds.get(integer(span.kinds, n));
    const [restorations, bytes] = [integer(span.restorations, n), width(span.widths, n)];
    const end = at + restorations * bytes;
    if (kind) {
      take({
        kind,
        month,
        restorations,
        rowVisits: integer(span.rowVisits, n),
        allVisits: integer(span.allVisits, n),
        own: big(span.ownCosts, n),
        shared: big(span.sharedCosts, n),
        retake: big(span.retakeCosts, n),
        costs: readCosts(span.costs.subarray(at, end), bytes),
      });
    }
    at = end;
  }
}

/** The same for what was spent on each category of consumable, by its name. */
export function forEachCategory(
  span: PackedSpan,
  kinds: ReadonlyMap<number, Kind>,
  names: ReadonlyMap<number, string>,
  take: (cost: CategoryCost) => void,
): void {
  const month = span.firstDay.slice(0, 7);
  for (let n = 0; n < count(span.categoryKinds, 4); n += 1) {
    const kind = kinds.get(integer(span.categoryKinds, n));
    if (!kind) continue;
    const number = integer(span.categories, n);
    const category = names.get(number);
    if (category === undefined) throw new Error(`There is no category ${number}`);
    take({ kind, month, category, cost: big(span.categoryCosts, n) });
  }
}

function count(array: Buffer, size: number): number {
  return Math.max(0, (array.length - HEADER) / (LENGTH + size));
}

function integer(array: Buffer, n: number): number {
  return array.readInt32BE(HEADER + n * 8 + LENGTH);
}

function width(array: Buffer, n: number): Width {
  const bytes = array.readInt16BE(HEADER + n * 6 + LENGTH);
  if (bytes !== 2 && bytes !== 4 && bytes !== 8) throw new Error(`No width is ${bytes}`);
  return bytes;
}

function big(array: Buffer, n: number): bigint {
  return array.readBigInt64BE(HEADER + n * 12 + LENGTH);
}
