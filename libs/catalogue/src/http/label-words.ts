import type { SheetLanguage } from './label-sheet.dto.js';

interface LabelWords {
  readonly title: string;
  readonly kinds: Readonly<Record<'location' | 'lot' | 'container', string>>;
  readonly lot: (number: string) => string;
  readonly noLot: string;
  readonly opened: (day: string) => string;
  readonly lastDay: (day: string) => string;
  readonly expires: (day: string) => string;
}

const EN: LabelWords = {
  title: 'Labels',
  kinds: { location: 'Place', lot: 'On the shelf', container: 'Opened container' },
  lot: (number) => `Lot ${number}`,
  noLot: 'Lot not stated',
  opened: (day) => `Opened ${day}`,
  lastDay: (day) => `Use by ${day}`,
  expires: (day) => `Expires ${day}`,
};

const DE: LabelWords = {
  title: 'Etiketten',
  kinds: { location: 'Ort', lot: 'Im Regal', container: 'Geöffneter Behälter' },
  lot: (number) => `Charge ${number}`,
  noLot: 'Charge nicht angegeben',
  opened: (day) => `Geöffnet ${day}`,
  lastDay: (day) => `Zu verbrauchen bis ${day}`,
  expires: (day) => `Verfällt ${day}`,
};

export const LABEL_WORDS: Readonly<Record<SheetLanguage, LabelWords>> = { en: EN, de: DE };

/** Months in letters: 03/04 is read differently in different countries. */
export function labelDay(day: string, language: SheetLanguage): string {
  const locale = language === 'de' ? 'de-DE' : 'en-GB';
  const format = new Intl.DateTimeFormat(locale, {
    ...{ day: 'numeric', month: 'short', year: 'numeric', timeZone: 'UTC' },
  });
  return format.format(new Date(`${day}T00:00:00Z`));
}

const LATIN = /[\u0020-\u007e\u00a0-\u00ff]/;

/** The standard fonts know western letters only: others lose their marks, or become a question mark. */
export function latin(text: string): string {
  return [...text.normalize('NFC')]
    .map((letter) => {
      if (LATIN.test(letter)) return letter;
      const bare = letter.normalize('NFD').charAt(0);
      return LATIN.test(bare) ? bare : '?';
    })
    .join('');
}
