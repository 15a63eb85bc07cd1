export type Language = 'en' | 'de';
export const LANGUAGES: readonly Language[] = ['en', 'de'];

type In = Readonly<Record<Language, string>>;

/** What may stand in a column, and how it is told apart. Values travel as text. */
export type ColumnType =
  | { readonly is: 'text'; readonly max: number }
  | {
      readonly is: 'decimal';
      readonly above?: string;
      readonly max: string;
      /** Digits after the point; 6, as the book keeps them, when left out. */
      readonly scale?: number;
    }
  | { readonly is: 'whole'; readonly min: number; readonly max: number }
  | { readonly is: 'date' }
  | { readonly is: 'flag' }
  /** Each value with the other words that people write for it. */
  | { readonly is: 'choice'; readonly words: Words }
  /** Several of them, with a semicolon or comma between; they are kept in their own order. */
  | { readonly is: 'choices'; readonly words: Words };

type Words = Readonly<Record<string, readonly string[]>>;

export interface Column {
  readonly key: string;
  readonly type: ColumnType;
  /** Without this column the file is of no use. */
  readonly required?: boolean;
  /** The heading that templates and exports have. */
  readonly heading: In;
  /** Other headings that mean the same. */
  readonly also?: readonly string[];
  /** One sentence for the sheet of explanations. */
  readonly help: In;
  /** What the example row of a template says. */
  readonly example?: string;
}

export const text = (max: number): ColumnType => ({ is: 'text', max });
export const amount = (max = '1000000000'): ColumnType => ({ is: 'decimal', max });
export const moreThanNothing = (max = '1000000'): ColumnType => ({
  is: 'decimal',
  above: '0',
  max,
});

/** A share in percent, more than nothing, of which the book keeps four digits after the point. */
export const percent = (max: string): ColumnType => ({ is: 'decimal', above: '0', max, scale: 4 });

/** The heading of remarks; a row whose remark begins with "example" is not read. */
export const REMARK: Column = {
  key: 'remark',
  type: text(2000),
  heading: { en: 'Remark', de: 'Bemerkung' },
  also: ['note', 'remarks', 'comment', 'notiz', 'kommentar', 'bemerkungen', 'hinweis'],
  help: {
    en: 'For you; it is not kept. A row whose remark begins with "Example" is not read.',
    de: 'Für Sie, wird nicht übernommen. Eine Zeile, deren Bemerkung mit „Beispiel“ beginnt, wird nicht gelesen.',
  },
};

export const EXAMPLE_REMARK: In = {
  en: 'Example: this row is not read',
  de: 'Beispiel: diese Zeile wird nicht gelesen',
};
