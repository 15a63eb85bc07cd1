import { expect, it } from '@jest/globals';
import { de } from '../../text/de.js';
import { en } from '../../text/en.js';
import { makeFormat } from '../../text/format.js';
import { proposedWords } from './why-words.js';

const FIGURES = [
  { name: 'position', value: '-36', unit: 'piece' },
  { name: 'reorder point', value: '66', unit: 'piece' },
  { name: 'mean use in lead time and review', value: '54.913', unit: 'piece' },
  { name: 'mean lead time', value: '5.8333', unit: 'days' },
  { name: 'review period', value: '7', unit: 'days' },
];

const formatIn = (locale: string, units: typeof en.units) =>
  makeFormat({ locale, units, currency: 'EUR', timeZone: 'Europe/Berlin' });

it('a line says in either language why it was proposed, as far as its figures go', () => {
  expect(proposedWords(FIGURES, formatIn('en-GB', en.units), en)).toBe(
    'There and on the way were -36\u00a0pieces, and the reorder point was 66\u00a0pieces. About ' +
      '55\u00a0pieces were expected to be used in 5.8 days of delivery and 7 days until the next look.',
  );
  expect(proposedWords(FIGURES, formatIn('de-DE', de.units), de)).toContain(
    'In 5,8 Tagen Lieferzeit und 7 Tagen bis zum nächsten Blick sollten etwa 55\u00a0Stück',
  );
  expect(proposedWords(FIGURES.slice(1), formatIn('en-GB', en.units), en)).toBeUndefined();
});
