/** Languages of the files of reports. */
export const FILE_LANGUAGES = ['en', 'de'] as const;
export type FileLanguage = (typeof FILE_LANGUAGES)[number];

/** The columns of all tables, by their English names, in German. */
const COLUMNS = {
  actual: 'Ist',
  'assistant cost': 'Kosten der Assistenz',
  'assistant minutes': 'Minuten der Assistenz',
  bought: 'gekauft',
  category: 'Kategorie',
  change: 'Änderung',
  charged: 'abgebucht',
  consumable: 'Verbrauchsmaterial',
  contribution: 'Deckungsbeitrag',
  'contribution from the fee list': 'Deckungsbeitrag aus der Honorarliste',
  cost: 'Kosten',
  currency: 'Währung',
  date: 'Datum',
  dentist: 'Behandler',
  difference: 'Unterschied',
  dispensed: 'entnommen',
  effect: 'Wirkung',
  fee: 'Honorar',
  fees: 'Honorare',
  'fees from the fee list': 'Honorare aus der Honorarliste',
  from: 'von',
  'from the fee list': 'aus der Honorarliste',
  habit: 'Gewohnheit',
  income: 'Einnahmen',
  'income from the fee list': 'Einnahmen aus der Honorarliste',
  kind: 'Art',
  material: 'Material',
  'material of the fee list': 'Material zur Honorarliste',
  'material without a fee': 'Material ohne Honorar',
  max: 'höchste',
  mean: 'Mittel',
  min: 'niedrigste',
  minutes: 'Minuten',
  month: 'Monat',
  own: 'eigen',
  p10: 'p10',
  p50: 'p50',
  p90: 'p90',
  'patient pays': 'Patient zahlt',
  'per chair hour': 'je Stuhlstunde',
  placed: 'im Zahn',
  'plan pays': 'Versicherung zahlt',
  planned: 'geplant',
  price: 'Preis',
  'price before': 'Preis davor',
  'price variance': 'Preisabweichung',
  quantity: 'Menge',
  rank: 'Rang',
  reason: 'Grund',
  restoration: 'Restauration',
  restorations: 'Restaurationen',
  retake: 'wiederholt',
  'retake share': 'Anteil wiederholt',
  retakes: 'wiederholt',
  'saved per year': 'erspart im Jahr',
  shade: 'Farbe',
  'share of material': 'Anteil am Material',
  shared: 'gemeinsam',
  standard: 'Standard',
  supplier: 'Lieferant',
  template: 'Vorlage',
  times: 'Male',
  to: 'bis',
  total: 'Summe',
  unit: 'Einheit',
  'usage variance': 'Verbrauchsabweichung',
  'used since': 'seither verbraucht',
  version: 'Fassung',
  visits: 'Besuche',
  waste: 'Verlust',
  'waste share': 'Anteil Verlust',
  'without a fee': 'ohne Honorar',
  'write-off': 'Nachlass',
} as const;

type PlainName = keyof typeof COLUMNS;

/** A column's name: a missing German word does not compile. */
export type ColumnName =
  | PlainName
  | `category: ${string}`
  | `${'material' | 'bought' | 'waste'} / ${'fees' | 'income'}`;

/** What the book itself says in a cell; what a person wrote stays as it was written. */
const CELLS: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  reason: {
    decay: 'Karies',
    fracture: 'Bruch',
    wear: 'Abrieb',
    cosmetic: 'Kosmetik',
    expired: 'verfallen',
    'after-opening limit': 'zu lange offen',
    contaminated: 'verunreinigt',
    'wrong shade opened': 'falsche Farbe geöffnet',
    residue: 'Rest im Behälter',
    damaged: 'beschädigt',
    temperature: 'zu warm oder zu kalt gelagert',
    recall: 'zurückgerufen',
    sample: 'als Muster verwendet',
  },
  kind: {
    'written off': 'ausgebucht',
    'charged, not placed': 'abgebucht, nicht im Zahn',
    retakes: 'Wiederholungen',
    used: 'genutzt',
    idle: 'ungenutzt',
    supplied: 'vorgehalten',
  },
  habit: {
    retakes: 'Wiederholungen',
    'wrong shade opened': 'falsche Farbe geöffnet',
    'after-opening limit': 'zu lange offen',
    expired: 'verfallen',
    'other write-offs': 'andere Ausbuchungen',
    'residue of single doses': 'Rest von Einzeldosen',
    'more than the template': 'mehr als die Vorlage',
  },
  unit: { mL: 'ml', piece: 'Stück', use: 'Anwendung', attempt: 'Versuch' },
};

const TOGETHER: Readonly<Record<string, string>> = { Together: 'Zusammen' };

export function germanColumn(name: string): string {
  const plain: Readonly<Record<string, string>> = COLUMNS;
  const [what = '', category] = name.split(/^category: /);
  if (category !== undefined) return `Kategorie: ${category}`;
  return what
    .split(' / ')
    .map((part) => plain[part] ?? part)
    .join(' / ');
}

export function germanCell(column: string, cell: string): string {
  return CELLS[column]?.[cell] ?? cell;
}

export function germanTotal(column: string, cell: string): string {
  return TOGETHER[cell] ?? germanCell(column, cell);
}

interface FileWords {
  readonly caution: string;
  readonly nothing: string;
  readonly about: string;
  readonly amountsIn: (currency: string) => string;
  readonly page: (number: number, of: number) => string;
}

/** What stands in a file besides its table. */
export const FILE_WORDS: Readonly<Record<FileLanguage, FileWords>> = {
  en: {
    caution:
      'Figures are planning aids. Instructions for use, local rules and licensed practice come first.',
    nothing: 'Nothing in this period.',
    about: 'About',
    amountsIn: (currency) => `Amounts in ${currency}.`,
    page: (number, of) => `page ${number} of ${of}`,
  },
  de: {
    caution:
      'Alle Zahlen sind Planungshilfen. Gebrauchsanweisung, örtliche Regeln und fachliche ' +
      'Verantwortung gehen vor.',
    nothing: 'Nichts in diesem Zeitraum.',
    about: 'Zu dieser Datei',
    amountsIn: (currency) => `Beträge in ${currency}.`,
    page: (number, of) => `Seite ${number} von ${of}`,
  },
};
