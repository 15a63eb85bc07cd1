import type { StockUnit } from '#lib/measure';
import type { SupplierKey } from './practice.js';

export type Dispensing = 'multi-use' | 'single-dose' | 'by-piece';

export interface DemoPack {
  readonly supplier: SupplierKey;
  readonly name: string;
  readonly dispensing: Dispensing;
  readonly containers: number;
  /** In stock units per container. */
  readonly content: number;
  readonly price: number;
  /** Of a kit: what else is in it. */
  readonly parts?: readonly DemoPart[];
}

export interface DemoPart {
  readonly consumable: string;
  readonly dispensing: Dispensing;
  readonly containers: number;
  /** In stock units per container. */
  readonly content: number;
  /** Of the price of the kit; the rest is for its own content. */
  readonly sharePercent: number;
}

export interface DemoConsumable {
  readonly key: string;
  readonly name: string;
  readonly category: string;
  readonly unit: StockUnit;
  /** What is ordered as a rule; the others are on the list only. */
  readonly packs: readonly [DemoPack, ...DemoPack[]];
  /** Shelf life from manufacture in months; 0 when the label states none. */
  readonly shelfMonths: number;
  readonly shade?: string;
  readonly opacity?: string;
  readonly viscosity?: string;
  readonly size?: string;
  readonly grit?: string;
  readonly life?: readonly [value: number, unit: 'day' | 'month'];
  readonly density?: number;
  readonly kept?: 'store' | 'fridge';
  /** Share of deliveries whose label states no lot. */
  readonly noLot?: number;
  /** Weeks of use at which to reorder, and up to which. */
  readonly weeks?: readonly [at: number, upTo: number];
  /** For what is hardly used: the same two figures in stock units. */
  readonly fixed?: readonly [at: number, upTo: number];
  /** Stocked in the rooms, in stock units at a time, and not only drawn from the store. */
  readonly roomStock?: number;
}

type PackRow = readonly [
  supplier: SupplierKey,
  name: string,
  containers: number,
  content: number,
  price: number,
];

function pack(dispensing: Dispensing, row: PackRow): DemoPack {
  const [supplier, name, containers, content, price] = row;
  return { supplier, name, dispensing, containers, content, price };
}

/** A kit is listed under the consumable for whose sake it is bought. */
export const kit = (own: DemoPack, parts: readonly DemoPart[]): DemoPack => ({ ...own, parts });

export const bottle = (...row: PackRow): DemoPack => pack('multi-use', row);
export const dose = (...row: PackRow): DemoPack => pack('single-dose', row);
export const pieces = (...row: PackRow): DemoPack => pack('by-piece', row);
