import { describe, expect, it } from '@jest/globals';
import { de } from '../../text/de.js';
import { makeFormat } from '../../text/format.js';
import { micro } from '../../ui/drawn.js';
import type { PlannedItem } from './api/planned-items.js';
import { methodWords } from './method-words.js';
import { NEXTS, sortItems } from './sort-items.js';
import { mondayOf, shownWeeks } from './weeks.js';

describe('the weeks that are shown', () => {
  const day = (on: string, issued: string, shortfall = '0', oneOff = false) => ({
    ...{ day: on, issued, shortfall, retakes: '0', oneOff },
  });
  const history = {
    ...{ from: '2026-04-20', to: '2026-05-03', total: '14', demand: '9', knownDays: 8 },
    days: [day('2026-04-21', '4'), day('2026-04-23', '5', '0', true), day('2026-05-01', '3', '2')],
    weeks: [
      { monday: '2026-04-20', demand: '4' },
      { monday: '2026-04-27', demand: '5' },
    ],
  };

  it('tell use, one-offs and days without stock apart', () => {
    expect(shownWeeks(history)).toEqual([
      { monday: '2026-04-20', demand: micro('4'), oneOff: micro('5'), shortDays: 0 },
      { monday: '2026-04-27', demand: micro('5'), oneOff: 0n, shortDays: 1 },
    ]);
    expect(['2026-05-03', '2026-05-04'].map(mondayOf)).toEqual(['2026-04-27', '2026-05-04']);
  });
});

describe('items in order', () => {
  const item = (name: string, more: Partial<PlannedItem>) =>
    ({ consumable: { name, shade: null, size: null, grit: null }, ...more }) as PlannedItem;
  const list = [
    item('Wedge', { next: 'order later', dueInDays: 9, runsOutInDays: 40, useInWeek: '2' }),
    item('Bib', { next: 'order now', dueInDays: 0, runsOutInDays: 3, useInWeek: '30' }),
    item('Strip', { next: 'order later', dueInDays: 4, runsOutInDays: 90, useInWeek: '7' }),
  ];
  const names = (sort: Parameters<typeof sortItems>[1]) =>
    sortItems(list, sort).map(({ consumable }) => consumable.name);

  it('are the most urgent first, or by what was asked', () => {
    expect(names('next')).toEqual(['Bib', 'Strip', 'Wedge']);
    expect(names('name')).toEqual(['Bib', 'Strip', 'Wedge']);
    expect(names('week')).toEqual(['Bib', 'Strip', 'Wedge']);
    expect(names('left')).toEqual(['Bib', 'Wedge', 'Strip']);
    expect(NEXTS[0]).toBe('order now');
  });
});

describe('a method of forecasting', () => {
  const inGerman = (method: string) =>
    methodWords(
      method,
      makeFormat({ locale: 'de-DE', units: de.units, currency: 'EUR', timeZone: 'Europe/Berlin' }),
      de,
    );

  it.each([
    ['exponential smoothing 0.03', 'exponentielle Glättung (0,03)'],
    ['TSB 0.1/0.01', 'Teunter, Syntetos und Babai (0,1 / 0,01)'],
    ['seasonal', 'Muster des Jahres'],
    ['one that is newer 0.2', 'one that is newer (0,2)'],
  ])('%s is said as %s', (method, words) => expect(inGerman(method)).toBe(words));
});
