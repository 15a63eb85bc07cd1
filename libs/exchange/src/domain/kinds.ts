import { type Column, type Language, REMARK } from './column.js';
import { BOOKED_VISIT_COLUMNS } from './kinds/booked-visits.js';
import { CONSUMABLE_COLUMNS } from './kinds/consumables.js';
import { LOCATION_COLUMNS } from './kinds/locations.js';
import { OPENING_STOCK_COLUMNS } from './kinds/opening-stock.js';
import { KIT_PART_COLUMNS, PACK_TERM_COLUMNS, PRICE_LIST_COLUMNS } from './kinds/packs.js';
import { PLANNING_COLUMNS, SUBSTITUTE_COLUMNS } from './kinds/planning.js';
import { SUPPLIER_COLUMNS } from './kinds/suppliers.js';
import { CLOSURE_COLUMNS } from './kinds/supply-terms.js';
import { TEMPLATE_COLUMNS } from './kinds/templates.js';
import { headingKey } from './match-columns.js';

/** The kinds of lists, in the order in which one needs the other. */
export const KINDS = [
  'suppliers',
  'closures',
  'locations',
  'consumables',
  'kit-parts',
  'price-lists',
  'planning',
  'substitutes',
  'templates',
  'opening-stock',
  'booked-visits',
] as const;
export type Kind = (typeof KINDS)[number];

/** What a file may be sent as: one list, or a workbook with a sheet for each. */
export const IMPORT_KINDS = [...KINDS, 'book'] as const;
export type ImportKind = (typeof IMPORT_KINDS)[number];

export interface KindFacts {
  readonly columns: readonly Column[];
  /** The name of its sheet. */
  readonly sheet: Readonly<Record<Language, string>>;
}

export const KIND_FACTS: Readonly<Record<Kind, KindFacts>> = {
  suppliers: { columns: SUPPLIER_COLUMNS, sheet: { en: 'Suppliers', de: 'Lieferanten' } },
  closures: { columns: CLOSURE_COLUMNS, sheet: { en: 'Closures', de: 'Freie Tage' } },
  locations: { columns: LOCATION_COLUMNS, sheet: { en: 'Locations', de: 'Lagerorte' } },
  consumables: {
    columns: [...CONSUMABLE_COLUMNS, ...PACK_TERM_COLUMNS],
    sheet: { en: 'Consumables', de: 'Verbrauchsmaterial' },
  },
  'kit-parts': { columns: KIT_PART_COLUMNS, sheet: { en: 'Kit parts', de: 'Teile von Sets' } },
  'price-lists': {
    columns: PRICE_LIST_COLUMNS,
    sheet: { en: 'Price lists', de: 'Preislisten' },
  },
  planning: { columns: PLANNING_COLUMNS, sheet: { en: 'Planning', de: 'Bestellplanung' } },
  substitutes: { columns: SUBSTITUTE_COLUMNS, sheet: { en: 'Substitutes', de: 'Ersatz' } },
  templates: {
    columns: TEMPLATE_COLUMNS,
    sheet: { en: 'Procedure templates', de: 'Vorlagen' },
  },
  'opening-stock': {
    columns: OPENING_STOCK_COLUMNS,
    sheet: { en: 'Opening stock', de: 'Anfangsbestand' },
  },
  'booked-visits': {
    columns: BOOKED_VISIT_COLUMNS,
    sheet: { en: 'Booked visits', de: 'Vorgemerkte Besuche' },
  },
};

/** What a kind's files may have in them. */
export function columnsOf(kind: Kind): readonly Column[] {
  return [...KIND_FACTS[kind].columns, REMARK];
}

/** The kind a sheet is named after, in either language. */
export function kindOfSheet(name: string): Kind | undefined {
  const wanted = headingKey(name);
  return KINDS.find((kind) => {
    const { en, de } = KIND_FACTS[kind].sheet;
    return [en, de, kind].some((each) => headingKey(each) === wanted);
  });
}
