import type { AlertKind } from './alert.js';
import type { LevelKind } from './reorder-level.js';

export const DIGEST_LANGUAGES = ['en', 'de'] as const;
export type DigestLanguage = (typeof DIGEST_LANGUAGES)[number];

/** What a digest says of one alert. */
export interface DigestAlert {
  readonly id: string;
  readonly kind: AlertKind;
  readonly subject: string;
  readonly place: string | null;
  /** By whose word the reorder point holds that it is about. */
  readonly level?: LevelKind;
  readonly figures: readonly {
    readonly name: string;
    readonly value: string;
    readonly unit: string;
  }[];
}

interface Words {
  readonly subject: (fresh: number, practice: string, day: string) => string;
  readonly head: (fresh: number) => string;
  readonly still: (more: number) => string;
  readonly foot: string;
  readonly kinds: Readonly<Record<AlertKind, string>>;
  readonly figures: Readonly<Record<string, string>>;
  readonly levels: Readonly<Record<LevelKind, string>>;
}

const EN: Words = {
  subject: (fresh, practice, day) =>
    `${practice}: ${fresh} new ${fresh === 1 ? 'thing needs' : 'things need'} somebody (${day})`,
  head: (fresh) =>
    fresh === 1 ? 'New since the last mail:' : `${fresh} new ones since the last mail:`,
  still: (more) =>
    more === 0
      ? 'Nothing else is open.'
      : `${more} told of earlier ${more === 1 ? 'is' : 'are'} still open; see the screen Today.`,
  foot: 'Figures are planning aids: instructions for use, local rules and licensed practice come first.',
  kinds: {
    'recalled lot on hand': 'Recalled lot on hand',
    'expired on shelf': 'Expired on the shelf',
    'opened too long': 'Opened too long',
    'open shortfall': 'Used without stock in the book',
    'runs out before delivery': 'Runs out before a delivery can be here',
    'overdue order': 'Ordered and late',
    'below reorder point': 'Below the reorder point',
    'expires within N days': 'Expires soon',
  },
  figures: {},
  levels: {
    'set in planning': 'set in planning',
    'typed in': 'typed in at the consumable',
    computed: 'computed from use',
  },
};

const DE: Words = {
  subject: (fresh, practice, day) => `${practice}: ${fresh} neu zu erledigen (${day})`,
  head: (fresh) =>
    fresh === 1 ? 'Neu seit der letzten Mail:' : `${fresh} neue seit der letzten Mail:`,
  still: (more) =>
    more === 0 ? 'Sonst ist nichts offen.' : `${more} früher gemeldete noch offen; siehe Heute.`,
  foot: 'Zahlen sind Planungshilfen: Gebrauchsanweisung, örtliche Regeln und Fachkunde gehen vor.',
  kinds: {
    'recalled lot on hand': 'Zurückgerufene Charge im Haus',
    'expired on shelf': 'Abgelaufen im Regal',
    'opened too long': 'Zu lange geöffnet',
    'open shortfall': 'Verbraucht ohne Bestand im Buch',
    'runs out before delivery': 'Geht vor der nächsten Lieferung aus',
    'overdue order': 'Bestellt und überfällig',
    'below reorder point': 'Unter dem Bestellpunkt',
    'expires within N days': 'Läuft bald ab',
  },
  figures: {
    'on hand': 'im Haus',
    'days left': 'Tage noch',
    'open shortfall': 'offener Fehlbestand',
    visits: 'Besuche',
    'estimated cost': 'geschätzte Kosten',
    usable: 'verwendbar',
    'on order': 'bestellt',
    'use until delivery': 'Verbrauch bis zur Lieferung',
    'booked use': 'davon vorgemerkt',
    'days until delivery': 'Tage bis zur Lieferung',
    'deliveries by then': 'Lieferungen bis dahin da',
    'orders seen': 'gesehene Bestellungen',
    chance: 'Wahrscheinlichkeit',
    'days late': 'Tage überfällig',
    'outstanding lines': 'offene Zeilen',
    'outstanding packs': 'offene Packungen',
    position: 'Bestand ohne Fehlbestand',
    'reorder at': 'Bestellpunkt',
    'reorder up to': 'auffüllen bis',
    'suggested packs': 'Vorschlag Packungen',
    'last price': 'letzter Preis',
    'order cost': 'Bestellwert',
    'expected to expire first': 'läuft vorher ab',
    'computed reorder point': 'berechneter Bestellpunkt',
    'use in days covered': 'erwarteter Verbrauch',
    'days covered': 'in Tagen',
  },
  levels: {
    'set in planning': 'in der Planung gesetzt',
    'typed in': 'am Material eingetragen',
    computed: 'aus dem Verbrauch berechnet',
  },
};

const WORDS: Readonly<Record<DigestLanguage, Words>> = { en: EN, de: DE };

export interface Digest {
  readonly practice: string;
  readonly day: string;
  readonly language: DigestLanguage;
  /** Told of for the first time. */
  readonly fresh: readonly DigestAlert[];
  /** Told of in an earlier digest and still open. */
  readonly still: number;
}

/** The mail of a day: what is new, most urgent first, and how many are still open. */
export function digestMail(digest: Digest): { readonly subject: string; readonly text: string } {
  const words = WORDS[digest.language];
  const kinds = [...new Set(digest.fresh.map((alert) => alert.kind))];
  const groups = kinds.map((kind) => {
    const lines = digest.fresh.filter((alert) => alert.kind === kind).map((a) => lineOf(a, words));
    return [words.kinds[kind], ...lines].join('\n');
  });
  const { length } = digest.fresh;
  return {
    subject: words.subject(length, digest.practice, digest.day),
    text: `${[words.head(length), ...groups, words.still(digest.still), words.foot].join('\n\n')}\n`,
  };
}

function lineOf({ subject, place, figures, level }: DigestAlert, words: Words): string {
  const numbers = figures.map(({ name, value, unit }) => {
    const shown = unit === 'days' || unit === 'packs' ? '' : unit;
    const number = `${words.figures[name] ?? name} ${value} ${shown}`.trim();
    return name === 'reorder at' && level ? `${number} (${words.levels[level]})` : number;
  });
  return `- ${[subject, place].filter((part) => part !== null).join(', ')}: ${numbers.join('; ')}`;
}
