import type { StockConsumableDto, StockLotDto, StockPlaceDto } from '../http/stock-refs.dto.js';

/** Columns that name a consumable in a list, read from `consumables c`. */
export const CONSUMABLE_COLUMNS = `c.id AS consumable_id, c.name AS consumable_name, c.category,
  c.shade, c.size, c.grit, c.stock_unit`;

export interface ConsumableColumns {
  readonly consumable_id: string;
  readonly consumable_name: string;
  readonly category: string;
  readonly shade: string | null;
  readonly size: string | null;
  readonly grit: string | null;
  readonly stock_unit: string;
}

export function toConsumable(row: ConsumableColumns): StockConsumableDto {
  return {
    id: row.consumable_id,
    name: row.consumable_name,
    category: row.category,
    shade: row.shade,
    size: row.size,
    grit: row.grit,
    unit: row.stock_unit,
  };
}

/** Columns that name a lot, read from `lots t`. */
export const LOT_COLUMNS = `t.id AS lot_id, t.lot_number, t.expires_on AS lot_expires_on,
  t.status AS lot_status`;

export interface LotColumns {
  readonly lot_id: string;
  readonly lot_number: string | null;
  readonly lot_expires_on: string | null;
  readonly lot_status: string;
}

export function toLot(row: LotColumns): StockLotDto {
  return {
    id: row.lot_id,
    lotNumber: row.lot_number,
    labelExpiry: row.lot_expires_on,
    status: row.lot_status,
  };
}

export function toPlace(id: string, name: string): StockPlaceDto {
  return { id, name };
}

/** The search text of a list as a pattern for LIKE: its own wildcards mean themselves. */
export function containing(text: string | undefined): string | null {
  if (text === undefined) return null;
  return `%${text
    .trim()
    .toLowerCase()
    .replace(/[\\%_]/g, '\\$&')}%`;
}
