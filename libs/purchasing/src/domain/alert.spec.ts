import { describe, expect, it } from '@jest/globals';
import { type Alert, amount, inOrderOfUrgency } from './alert.js';
import { kindOnShelf, type ShelfFacts, shelfAlert } from './stock-alerts.js';

const facts: ShelfFacts = {
  holdingId: 'h1',
  consumable: {
    id: 'c1',
    name: 'Paste',
    category: 'paste',
    shade: 'Body 2',
    size: null,
    grit: null,
    unit: 'g',
  },
  lot: { id: 'l1', lotNumber: 'LX-1', labelExpiry: '2026-06-30', status: 'released' },
  location: { id: 'p1', name: 'Room 2' },
  onHand: '2',
  openedOn: null,
  lastDay: '2026-06-30',
  daysLeft: 47,
};

describe('why something on a shelf needs somebody', () => {
  it.each([
    ['has time left', { daysLeft: 61 }, undefined],
    ['reaches the last day of the window', { daysLeft: 60 }, 'expires within N days'],
    ['has its last day today', { daysLeft: 0 }, 'expires within N days'],
    ['passed its label yesterday', { daysLeft: -1 }, 'expired on shelf'],
    ['never expires', { daysLeft: null, lastDay: null }, undefined],
    [
      'is open too long',
      { openedOn: '2026-01-01', lastDay: '2026-03-01', daysLeft: -5 },
      'opened too long',
    ],
    ['is open and past its label', { openedOn: '2026-01-01', daysLeft: -5 }, 'expired on shelf'],
    ['is recalled', { lot: { ...facts.lot, status: 'recalled' } }, 'recalled lot on hand'],
    ['is held back', { lot: { ...facts.lot, status: 'quarantined' } }, 'recalled lot on hand'],
    [
      'is recalled and expired',
      { daysLeft: -9, lot: { ...facts.lot, status: 'recalled' } },
      'recalled lot on hand',
    ],
  ])('%s', (_, change, kind) => {
    expect(kindOnShelf({ ...facts, ...change }, 60)).toBe(kind);
  });

  it('is told in a sentence with its figures and what to do', () => {
    expect(shelfAlert({ ...facts, daysLeft: -1 }, 60)).toMatchObject({
      id: 'expired-on-shelf:h1',
      severity: 2,
      sentence:
        '2 g of Paste, Body 2 (lot LX-1) in Room 2 expired on 2026-06-30. Nobody may use it.',
      figures: [
        { name: 'on hand', value: '2', unit: 'g' },
        { name: 'days left', value: '-1', unit: 'days' },
      ],
      action: { method: 'POST', href: '/api/stock/write-offs' },
    });
  });

  it('never invents a lot number', () => {
    const unnamed = { ...facts, daysLeft: 1, lot: { ...facts.lot, lotNumber: null } };
    expect(shelfAlert(unnamed, 60)?.sentence).toBe(
      '2 g of Paste, Body 2 (lot not stated) in Room 2 can be used until 2026-06-30: ' +
        'its last day is tomorrow.',
    );
  });
});

describe('the order of alerts', () => {
  const at = (id: string, severity: number, urgency: string) =>
    ({ ...shelfAlert({ ...facts, daysLeft: 1 }, 60), id, severity, urgency }) as Alert;

  it('is by severity, then by day, then by id', () => {
    const list = [
      at('c', 6, '2026-01-01'),
      at('b', 1, '2026-02-02'),
      at('a', 1, '2026-02-02'),
      at('d', 1, '2026-01-01'),
    ];
    expect(inOrderOfUrgency(list).map((a) => a.id)).toEqual(['d', 'a', 'b', 'c']);
  });
});

it.each([
  ['1', 'piece', '1 piece'],
  ['3', 'piece', '3 pieces'],
  ['0.4', 'g', '0.4 g'],
  ['2', 'use', '2 uses'],
])('%s %s is written %s', (value, unit, text) => {
  expect(amount(value, unit)).toBe(text);
});
