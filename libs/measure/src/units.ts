/** The units in which a consumable is kept: mass, volume, count, length, and times of use. */
export const STOCK_UNITS = ['g', 'mL', 'piece', 'cm', 'use'] as const;

export type StockUnit = (typeof STOCK_UNITS)[number];

const WHOLE_UNITS: ReadonlySet<string> = new Set<StockUnit>(['piece', 'use']);

/** Whether the unit is counted, so that stock in it is a whole number. */
export function isWholeUnit(unit: string): boolean {
  return WHOLE_UNITS.has(unit);
}
