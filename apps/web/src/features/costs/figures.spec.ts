import { describe, expect, it } from '@jest/globals';
import type { Habit } from './api/report-habits.js';
import type { UsageRow } from './api/report-usage.js';
import { addressOf } from './choice.js';
import { costOfOne, kindOf, thingOf } from './habits/habit-words.js';
import { daysOf, lastDayOf, periodOf } from './periods.js';
import { costRow } from './rows.fixture.js';
import { sortRows } from './sort-rows.js';
import { rankedBy, sumOf, type WasteReport, wasteByMonth } from './sums.js';
import { shareOfPlan, shortMean, versionOf, versionsOf } from './usage.js';

describe('a period', () => {
  it('is made of whole months up to today', () => {
    expect(lastDayOf('2028-02')).toBe('2028-02-29');
    expect(daysOf('this-month', '2026-03-09')).toEqual({ from: '2026-03-01', to: '2026-03-09' });
    expect(daysOf('last-month', '2026-01-31')).toEqual({ from: '2025-12-01', to: '2025-12-31' });
    expect(daysOf('three-months', '2026-01-05')).toEqual({ from: '2025-11-01', to: '2026-01-05' });
    expect(daysOf('twelve-months', '2026-01-05').from).toBe('2025-02-01');
  });

  it('is known again by its days', () => {
    expect(periodOf({ from: '2025-12-01', to: '2025-12-31' }, '2026-01-31')).toBe('last-month');
    expect(periodOf({ from: '2025-12-02' }, '2026-01-31')).toBeUndefined();
    expect(periodOf({}, '2026-01-31')).toBeUndefined();
  });
});

describe('a habit', () => {
  it('has a cost of one time, and is about a consumable or a template', () => {
    expect(costOfOne({ cost: '10.00', times: 4 })).toBe('2.50');
    expect(costOfOne({ cost: '10.00', times: 0 })).toBe('10.00');
    const about = { consumableName: 'Paste', shade: 'Body 2', templateName: 'Front filling' };
    expect(thingOf(about as Habit)).toBe('Paste, Body 2');
    expect(thingOf({ ...about, consumableName: null, shade: null } as Habit)).toBe('Front filling');
    expect([kindOf('expired'), kindOf('made up')]).toEqual(['expired', undefined]);
  });
});

describe('the rows of a report', () => {
  const small = costRow({ templateName: 'A', total: '9.00', p50: '9.00', restorations: 1 });
  const large = costRow({ templateName: 'B', total: '10.00', p50: '2.50', restorations: 4 });

  it('are sorted by exact amounts, not by letters', () => {
    expect(sortRows([small, large], 'total')).toEqual([large, small]);
    expect(sortRows([large, small], 'p50')).toEqual([small, large]);
    expect(sortRows([small, large], 'restorations')).toEqual([large, small]);
    expect(sortRows([small, large], 'retakes')).toEqual([small, large]);
    expect(sortRows([large, small], 'name')).toEqual([large, small]);
  });
});

describe('sums', () => {
  it('are exact, the largest first', () => {
    const rows = [
      { why: 'expired', cost: '0.10' },
      { why: 'opened', cost: '0.25' },
      { why: 'expired', cost: '0.20' },
    ];
    expect(rankedBy(rows, (row) => row.why)).toEqual([
      { name: 'expired', cost: '0.30' },
      { name: 'opened', cost: '0.25' },
    ]);
    expect(sumOf(['0.1', '0.2', '0.000001'])).toBe('0.300001');
    expect(sumOf([])).toBe('0.00');
  });

  it('put write-offs and what was left at the chair of a month together', () => {
    const row = { category: 'paste', unit: 'g', reason: 'expired', quantity: '1' };
    const chair = { category: 'paste', unit: 'g', placed: '1', charged: '2', wasted: '1' };
    const report = {
      writeOffs: [{ ...row, month: '2026-03', cost: '2.00' }],
      chairside: [
        { ...chair, month: '2026-04', cost: '1.50' },
        { ...chair, month: '2026-03', cost: '0.25' },
      ],
    } as unknown as WasteReport;
    expect(wasteByMonth(report)).toEqual([
      { month: '2026-04', thrown: '0.00', chairside: '1.50', sum: '1.50' },
      { month: '2026-03', thrown: '2.00', chairside: '0.25', sum: '2.25' },
    ]);
  });
});

describe('a template and reality', () => {
  const usage = (change: Partial<UsageRow>) => change as UsageRow;
  const rows = [
    usage({ version: 1, latest: false }),
    usage({ version: 10, latest: true }),
    usage({ version: 10, latest: true }),
  ];

  it('are shown for the latest version unless another is asked for', () => {
    expect(versionsOf(rows).map(({ version }) => version)).toEqual(['10', '1']);
    expect(versionOf(rows, undefined)).toHaveLength(2);
    expect(versionOf(rows, '1')).toHaveLength(1);
    expect(versionOf([], undefined)).toEqual([]);
  });

  it('differ by a part of what was planned', () => {
    expect(shareOfPlan(usage({ planned: '0.2', difference: '-0.05' }))).toBe(-0.25);
    expect(shareOfPlan(usage({ planned: '0', difference: '0.05' }))).toBeNull();
  });

  it.each([
    ['1.149333', '1.15'],
    ['0.000817', '0.000817'],
    ['-0.016666', '-0.0167'],
    ['120.5', '121'],
    ['0', '0'],
  ])('say %s as %s', (exact, short) => expect(shortMean(exact)).toBe(short));
});

it('an address leaves out what is not chosen', () => {
  expect(addressOf('/x.csv', { from: undefined })).toBe('/x.csv');
  expect(addressOf('/x.csv', { from: '2026-01-01', reason: undefined, by: 'a,b' })).toBe(
    '/x.csv?from=2026-01-01&by=a%2Cb',
  );
});
