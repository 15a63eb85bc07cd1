import { describe, expect, it } from '@jest/globals';
import { csvOf, replayArguments } from './replay.js';

describe('the arguments of a replay', () => {
  it('are a day and a file, or nothing', () => {
    expect(replayArguments([])).toEqual({ from: null, csv: null });
    expect(replayArguments(['--from', '2026-01-31', '--csv', 'a.csv'])).toEqual({
      ...{ from: '2026-01-31', csv: 'a.csv' },
    });
  });

  it.each([[['--from', '2026-02-30']], [['--from']], [['--to', 'x']], [['2026-01-01']]])(
    'are refused in a sentence: %j',
    (args) => {
      expect(() => replayArguments(args)).toThrow(
        expect.objectContaining({ name: 'StartupError' }),
      );
    },
  );
});

describe('a replay as a file', () => {
  const side = { stockOutDays: 2, unmet: '3', wasted: '0', wastedValue: null };
  const lines = { stockOutDays: 2, itemsOut: 1, wastedValue: '0', averageValue: '0', orders: 1 };
  const sums = { ...lines, sent: 1, freight: '0' };
  const settings = { serviceMeasure: 'cycle service', serviceLevel: '0.95', reviewDays: 7 };

  it('has a line per item, and no formula in it', () => {
    const both = { ...side, averageStock: '1.5', averageValue: '9.00', orders: 4 };
    const name = '=SUM(A1), "all"';
    const text = csvOf([
      {
        ...{ name: 'Practice', firstDay: '2026-01-01', lastDay: '2026-02-01' },
        result: {
          ...{ currency: 'EUR', computed: sums, old: sums, weeks: [] },
          ...{
            settings: { ...settings, reckonDays: 28 },
            notUsed: 0,
            notBought: 0,
            withoutPrice: 0,
          },
          items: [
            {
              consumable: {
                ...{ id: 'c', name, category: 'x', shade: null, size: null, grit: null, unit: 'g' },
              },
              ...{ oldRule: 'when empty', daysWithUse: 7, computed: both, old: both },
            },
          ],
        },
      },
      { name: 'New', firstDay: null, lastDay: null, result: null },
    ]);
    const [head, line, ...rest] = text.split('\r\n');
    expect(head?.split(',')).toHaveLength(20);
    expect(line).toBe(
      `Practice,"'=SUM(A1), ""all""",,g,when empty,7,2,3,0,,1.5,9.00,4,2,3,0,,1.5,9.00,4`,
    );
    expect(rest).toEqual(['']);
  });
});
