/** What a file may list, as the service calls it. */
export const KINDS = [
  'suppliers',
  'locations',
  'consumables',
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
