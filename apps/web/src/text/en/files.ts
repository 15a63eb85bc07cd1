import type { Shape } from '../../api/client.js';

/** Where something is wrong in a file. */
interface Place {
  readonly sheet: string;
  readonly row: number;
  /** The heading in the language of the screen. */
  readonly heading: string | null;
}

/** Bringing lists in from files, and taking the book out. */
export const files = {
  title: 'Files',
  lead: 'Bring in the lists you have, and take the book with you.',
  bring: {
    title: 'Bring a list in',
    hint: 'Nothing is kept before you say so: first you see what would become of each row.',
    kind: 'What the file lists',
    chooseKind: 'Choose',
    empty: 'An empty list to fill in:',
    emptyLabel: (kind: string, form: string) => `Empty list, ${kind}, ${form}`,
    drop: 'Drop a file here, or',
    choose: 'Choose a file',
    other: 'Another file',
    forms: 'CSV or XLSX, up to 10 MB and 20,000 rows.',
    checking: 'Reading the file.',
    tooLarge: 'This file is larger than 10 MB. Split it into several.',
  },
  kinds: {
    suppliers: 'Suppliers and their terms',
    closures: 'Days on which suppliers are closed',
    locations: 'Locations',
    consumables: 'Consumables, packs and prices',
    'kit-parts': 'Parts of kits',
    'price-lists': 'Price lists by number of packs',
    planning: 'Planning of consumables',
    substitutes: 'What may stand in for what',
    templates: 'Procedure templates',
    'opening-stock': 'Opening stock',
    'booked-visits': 'Booked visits',
    book: 'The whole book (a workbook with a sheet for each)',
  },
  sheet: {
    columns: 'Columns',
    columnsHint: 'Which column is which. Change what was taken wrongly.',
    column: 'Column',
    heading: 'Heading in the file',
    sample: 'For example',
    as: 'Is read as',
    asLabel: (column: string) => `Column ${column} is read as`,
    unknown: 'Not known',
    leaveOut: 'Leave it out',
    leaveAllOut: 'Leave out all that is not known',
    leftOut: (names: string) => `Not read: ${names}`,
    rows: 'Rows',
    // The service speaks English.
    problem: (of: { readonly sentence: string } & Shape<'SheetProblemDto'>) => of.sentence,
  },
  fates: { all: 'All', new: 'New', changed: 'Changed', same: 'Same', error: 'Errors' },
  fate: { new: 'new', changed: 'changed', same: 'same', error: 'error' },
  table: { row: 'Row', what: 'What', fate: 'Becomes', details: 'Details' },
  shown: (shown: number, all: number) => `The first ${shown} of ${all} rows are shown.`,
  nothing: 'nothing',
  problem: (of: Shape<'CellProblemDto'>, _at: Place) => of.sentence,
  run: {
    button: (rows: number) => (rows === 1 ? 'Bring 1 row in' : `Bring ${rows} rows in`),
    nothing: 'Everything in it is in the book already.',
    blocked: 'Mend the file and choose it again: nothing comes in while anything is wrong.',
    going: 'Bringing it in',
    progress: (done: number, total: number) => `${done} of ${total} rows`,
    done: (added: number, changed: number, same: number) =>
      `Brought in: ${added} new, ${changed} changed, ${same} the same.`,
  },
  take: {
    title: 'Take the book out',
    hint: 'What is written here can be brought in again, also into an empty book.',
    label: (kind: string, form: string) => `${kind} as ${form}`,
  },
  log: {
    title: 'Brought in lately',
    file: 'File',
    kind: 'What',
    when: 'When',
    who: 'By',
    outcome: 'What came of it',
    empty: 'Nothing was brought in yet.',
    emptyHint: 'What you bring in is listed here.',
    running: 'under way',
    broken: 'broken off; nothing of it is in the book',
    refused: 'refused; nothing of it is in the book',
  },
  caution:
    'Figures are planning aids. Instructions for use, local rules and licensed practice come first.',
};
