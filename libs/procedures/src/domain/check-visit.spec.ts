import { describe, expect, it } from '@jest/globals';
import { parseIsoTooth } from '#lib/dentition';
import {
  formatMoney,
  type Money,
  money,
  moneyFromMicro,
  multiplyRatio,
  quantity,
  sum,
} from '#lib/measure';
import { expandUsage } from './expand-usage.js';
import type { Driver, PlannedLine, PlannedRestoration, TemplateLine } from './template.js';

/**
 * An arithmetic check worked out by hand outside this program: one class III filling with invented
 * prices, USD. Each row: consumable, driver, amount, price of a pack, what the pack holds.
 * Published total of the same order: US$ 7.96 in 2013 (Braz J Oral Sci 2013;12(4), cost of
 * materials in class III, IV and V, abstract).
 */
const ROWS: readonly [string, Driver, string, string, string][] = [
  ['topical gel', 'visit', '0.3', '9.00', '30'],
  ['cartridge', 'visit', '1', '45.00', '50'],
  ['needle', 'visit', '1', '14.00', '100'],
  ['glove', 'staff member', '3', '9.00', '100'],
  ['mask', 'staff member', '1', '8.00', '50'],
  ['bib', 'visit', '1', '22.50', '500'],
  ['saliva ejector', 'visit', '1', '5.00', '100'],
  ['suction tip', 'visit', '1', '9.00', '100'],
  ['air/water tip', 'visit', '1', '24.00', '200'],
  ['dam', 'visit', '1', '18.00', '36'],
  ['light sleeve', 'visit', '1', '12.00', '100'],
  ['syringe sleeve', 'visit', '3', '6.00', '100'],
  ['articulating paper', 'visit', '1', '14.00', '200'],
  ['cutting bur', 'tooth', '1', '37.50', '25'],
  ['finishing bur', 'restoration', '1', '10.00', '5'],
  ['etching gel', 'tooth', '0.08', '20.00', '4.8'],
  ['etch tip', 'restoration', '1', '20.00', '100'],
  ['micro-applicator', 'tooth', '2', '9.00', '100'],
  ['adhesive', 'tooth', '0.03', '110.00', '5'],
  ['composite', 'restoration', '0.06', '72.00', '4'],
  ['clear matrix strip', 'proximal surface', '1', '7.00', '100'],
  ['wedge', 'proximal surface', '1', '12.00', '100'],
  ['finishing strip', 'proximal surface', '1', '38.00', '100'],
  ['disc', 'restoration', '3', '45.00', '50'],
  ['polishing paste', 'restoration', '0.05', '28.00', '4'],
];

/** The same with one single-dose capsule and one single dose of adhesive, charged whole. */
const SINGLE_DOSES = ROWS.map((row): (typeof ROWS)[number] => {
  if (row[0] === 'composite') return ['composite', 'restoration', '1', '110.00', '20'];
  return row[0] === 'adhesive' ? ['adhesive', 'tooth', '1', '125.00', '50'] : row;
});

function filling(rows: typeof ROWS, digits: number): PlannedRestoration {
  const tooth = parseIsoTooth(digits);
  if (tooth === undefined) throw new Error(`${digits} is no tooth`);
  const lines = rows.map(([consumableId, driver, amount], index): TemplateLine => {
    const dispensed = quantity(amount);
    const rest = { everyAttempt: false, reasons: null, sharesDose: false, anaesthetic: false };
    return { lineNumber: index + 1, consumableId, driver, placed: dispensed, dispensed, ...rest };
  });
  const source = { volumeSource: 'planning value', lengthMm: null, widthMm: null } as const;
  const size = { volumeMm3: quantity('12'), depthMm: quantity('2'), ...source };
  return {
    tooth,
    surfaces: ['M'],
    cavityClass: 'III',
    reason: 'decay',
    template: {
      templateId: 'check',
      version: 1,
      name: 'Class III',
      minutes: 45,
      assistantMinutes: 45,
      layerThicknessMm: quantity('2'),
      active: true,
      lines,
    },
    shades: [],
    attempts: 1,
    cycles: 1,
    ...size,
    minutes: 45,
    assistantMinutes: 45,
  };
}

function priced(rows: typeof ROWS, lines: readonly PlannedLine[]): Money {
  const costs = lines.map(({ consumableId, dispensed }) => {
    const row = rows.find(([name]) => name === consumableId);
    if (!row) throw new Error(`${consumableId} has no price`);
    return moneyFromMicro(multiplyRatio(money(row[3]), dispensed, quantity(row[4]), 'half-up'));
  });
  return sum(costs);
}

function visit(rows: typeof ROWS, teeth: readonly number[]) {
  const restorations = teeth.map((digits) => filling(rows, digits));
  return expandUsage({ restorations, staffCount: 2, isWhole: () => false });
}

describe('the check visit', () => {
  const one = visit(ROWS, [11]);
  const shared = one.filter(({ restoration, tooth }) => restoration === null && tooth === null);

  it('costs 12.74', () => {
    expect(formatMoney(priced(ROWS, one), 2)).toBe('12.74');
    expect(formatMoney(priced(ROWS, one), 4)).toBe('12.7383');
  });

  it('has a visit part of 3.165, which is 24.8 percent', () => {
    expect(shared).toHaveLength(13);
    expect(priced(ROWS, shared)).toBe(money('3.165'));
    const tenths = multiplyRatio(priced(ROWS, shared), 1000n, priced(ROWS, one), 'half-up');
    expect(tenths).toBe(248n);
  });

  it('costs 9.57 more for a second tooth', () => {
    const more = priced(ROWS, visit(ROWS, [11, 21])) - priced(ROWS, one);
    expect(formatMoney(moneyFromMicro(more), 2)).toBe('9.57');
    expect(formatMoney(moneyFromMicro(more), 4)).toBe('9.5733');
  });

  it('costs 19.00 with single doses', () => {
    const lines = visit(SINGLE_DOSES, [11]);
    expect(formatMoney(priced(SINGLE_DOSES, lines), 2)).toBe('19.00');
    expect(formatMoney(priced(SINGLE_DOSES, lines), 3)).toBe('18.998');
  });
});
