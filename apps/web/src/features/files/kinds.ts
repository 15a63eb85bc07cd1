/** What a file may list, as the service calls it. */
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
  'book',
] as const;
export type FileKind = (typeof KINDS)[number];

/** A workbook alone holds several sheets. */
export function formsOf(kind: FileKind): readonly ('csv' | 'xlsx')[] {
  return kind === 'book' ? ['xlsx'] : ['csv', 'xlsx'];
}
