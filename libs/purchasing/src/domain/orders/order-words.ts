export const ORDER_LANGUAGES = ['en', 'de'] as const;
export type OrderLanguage = (typeof ORDER_LANGUAGES)[number];

/** What of an order stands on paper and in mails, in the language of the supplier. */
export interface OrderWords {
  readonly title: (number: number) => string;
  readonly supplier: string;
  readonly customerNumber: string;
  readonly deliverTo: string;
  readonly date: string;
  readonly wantedBy: string;
  readonly reference: string;
  readonly amountsIn: string;
  readonly columns: readonly [string, string, string, string, string, string];
  readonly label: string;
  readonly goods: string;
  readonly freight: string;
  readonly total: string;
  readonly unpriced: string;
  readonly expected: string;
  readonly note: string;
  readonly draft: string;
  readonly page: (number: number, of: number) => string;
  readonly mail: (about: MailFacts) => WrittenMail;
  readonly chasing: (about: ChasingFacts) => WrittenMail;
}

export interface MailFacts {
  readonly number: number;
  readonly practice: string;
  readonly customerNumber: string | null;
  readonly expectedOn: string;
  readonly note: string | null;
}

export interface ChasingFacts {
  readonly number: number;
  readonly practice: string;
  readonly customerNumber: string | null;
  readonly orderedOn: string;
  readonly expectedOn: string;
  /** '3 × Syringe 4 g, Paste, Body 2'. */
  readonly lines: readonly string[];
  readonly note: string | null;
}

export interface WrittenMail {
  readonly subject: string;
  readonly text: string;
}

function letter(...parts: readonly (string | null)[]): string {
  return `${parts.filter((part) => part !== null).join('\n\n')}\n`;
}

const EN: OrderWords = {
  title: (number) => `Order ${number}`,
  supplier: 'Supplier',
  customerNumber: 'Customer number',
  deliverTo: 'Deliver to',
  date: 'Ordered on',
  wantedBy: 'Expected by',
  reference: 'Your reference',
  amountsIn: 'Amounts in',
  columns: ['', 'Article', 'Goods', 'Packs', 'Price', 'Amount'],
  label: 'label',
  goods: 'Goods',
  freight: 'Freight',
  total: 'Total',
  unpriced: 'Lines without a price are not in the total.',
  expected: 'Prices are those we expect. Please tell us before you send if they differ.',
  note: 'Note',
  draft: 'Draft, not an order',
  page: (number, of) => `Page ${number} of ${of}`,
  mail: ({ number, practice, customerNumber, expectedOn, note }) => ({
    subject: `Order ${number} of ${practice}${customerNumber ? ` (customer ${customerNumber})` : ''}`,
    text: letter(
      'Dear Sir or Madam,',
      `attached is our order ${number}, as a PDF and as a table (CSV). We expect the goods by ` +
        `${expectedOn}. Please tell us if something cannot come or costs another price.`,
      note,
      `Kind regards\n${practice}`,
    ),
  }),
  chasing: ({ number, practice, customerNumber, orderedOn, expectedOn, lines, note }) => ({
    subject: `Where is our order ${number}? ${practice}${customerNumber ? ` (customer ${customerNumber})` : ''}`,
    text: letter(
      'Dear Sir or Madam,',
      `of our order ${number} of ${orderedOn}, which we expected by ${expectedOn}, this is still ` +
        'missing:',
      lines.map((line) => `- ${line}`).join('\n'),
      'Please tell us when it will come, or what cannot come.',
      note,
      `Kind regards\n${practice}`,
    ),
  }),
};

const DE: OrderWords = {
  title: (number) => `Bestellung ${number}`,
  supplier: 'Lieferant',
  customerNumber: 'Kundennummer',
  deliverTo: 'Lieferanschrift',
  date: 'Bestellt am',
  wantedBy: 'Erwartet bis',
  reference: 'Ihr Zeichen',
  amountsIn: 'Beträge in',
  columns: ['', 'Artikel', 'Ware', 'Packungen', 'Preis', 'Betrag'],
  label: 'Etikett',
  goods: 'Ware',
  freight: 'Versand',
  total: 'Gesamt',
  unpriced: 'Zeilen ohne Preis sind nicht in der Summe.',
  expected:
    'Die Preise sind die von uns erwarteten. Bitte melden Sie sich vor dem Versand, wenn sie abweichen.',
  note: 'Bemerkung',
  draft: 'Entwurf, keine Bestellung',
  page: (number, of) => `Seite ${number} von ${of}`,
  mail: ({ number, practice, customerNumber, expectedOn, note }) => ({
    subject: `Bestellung ${number}, ${practice}${customerNumber ? ` (Kunde ${customerNumber})` : ''}`,
    text: letter(
      'Guten Tag,',
      `anbei unsere Bestellung ${number} als PDF und als Tabelle (CSV). Wir erwarten die Ware bis ` +
        `${expectedOn}. Bitte melden Sie sich, wenn etwas nicht kommen kann oder anders kostet.`,
      note,
      `Freundliche Grüße\n${practice}`,
    ),
  }),
  chasing: ({ number, practice, customerNumber, orderedOn, expectedOn, lines, note }) => ({
    subject: `Wo bleibt unsere Bestellung ${number}? ${practice}${customerNumber ? ` (Kunde ${customerNumber})` : ''}`,
    text: letter(
      'Guten Tag,',
      `von unserer Bestellung ${number} vom ${orderedOn}, erwartet bis ${expectedOn}, fehlt noch:`,
      lines.map((line) => `- ${line}`).join('\n'),
      'Bitte teilen Sie uns mit, wann es kommt oder was nicht kommen kann.',
      note,
      `Freundliche Grüße\n${practice}`,
    ),
  }),
};

const WORDS: Readonly<Record<OrderLanguage, OrderWords>> = { en: EN, de: DE };

export function orderWords(language: string): OrderWords {
  return language === 'de' ? WORDS.de : WORDS.en;
}

/** 25 November 2026, in German 25. November 2026. */
export function dayText(day: string, language: string): string {
  const format = new Intl.DateTimeFormat(language === 'de' ? 'de-DE' : 'en-GB', {
    ...{ dateStyle: 'long', timeZone: 'UTC' },
  });
  return format.format(new Date(`${day}T00:00:00Z`));
}

/** 1,234.50, in German 1.234,50; with as many digits as the currency has, more where they count. */
export function amountText(decimal: string, digits: number, language: string): string {
  const format = new Intl.NumberFormat(language === 'de' ? 'de-DE' : 'en-GB', {
    ...{ minimumFractionDigits: digits, maximumFractionDigits: 6 },
  });
  return format.format(decimal as Intl.StringNumericLiteral);
}
