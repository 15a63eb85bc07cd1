import { expect, it } from '@jest/globals';
import { type Cell, CostGroups, type Kind } from './cost-groups.js';

const kind = (templateId: string, reason: string): Kind => ({
  templateId,
  templateName: `Template ${templateId}`,
  reason,
  dentistId: 'd',
  dentistName: 'Jon Weir',
});

const cell = (of: Kind, month: string, restorations: number): Cell => ({
  kind: of,
  month,
  restorations,
  rowVisits: restorations,
  allVisits: restorations - 1,
  own: BigInt(restorations) * 10n,
  shared: 1n,
  retake: 0n,
  costs: new Float64Array(restorations),
});

it('adds cells up by what is asked for, in its order, and to the total', () => {
  const sums = new CostGroups(['reason', 'month']);
  sums.add(cell(kind('b', 'wear'), '2026-02', 3));
  sums.add(cell(kind('a', 'wear'), '2026-02', 2));
  sums.add(cell(kind('a', 'decay'), '2026-02', 4));
  sums.add(cell(kind('a', 'wear'), '2026-01', 5));
  sums.addCategory({ kind: kind('a', 'wear'), month: '2026-01', category: 'paste', cost: 7n });
  const rows = sums
    .sorted()
    .map(({ kind: of, month, sums: { restorations, own } }) => [
      of.reason,
      month,
      restorations,
      own,
    ]);
  expect(rows).toEqual([
    ['decay', '2026-02', 4, 40n],
    ['wear', '2026-01', 5, 50n],
    ['wear', '2026-02', 5, 50n],
  ]);
  expect(sums.totals).toMatchObject({ restorations: 14, visits: 10, own: 140n, shared: 4n });
  expect(sums.totals.categories).toEqual(new Map([['paste', 7n]]));
});

it('leaves out a row of which everything was taken away again', () => {
  const sums = new CostGroups(['template']);
  sums.add(cell(kind('a', 'wear'), '2026-02', 1));
  const none = { restorations: -1, rowVisits: -1, allVisits: 0, own: -10n, shared: -1n };
  const removed = new Float64Array(1);
  const costs = new Float64Array(0);
  sums.add({ ...cell(kind('a', 'wear'), '2026-03', 1), ...none, costs, removed });
  expect(sums.sorted()).toEqual([]);
  expect(sums.totals).toMatchObject({ restorations: 0, visits: 0, own: 0n, shared: 0n });
});
