import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { DataSource } from 'typeorm';
import { money, sum } from '#lib/measure';
import { UnitOfWork } from '#lib/platform';
import { actor, fillBook, idOf, stranger } from '../../../../test/harness/book-rows.js';
import {
  asOwner,
  createTestDatabase,
  type TestDatabase,
  testDataSource,
} from '../../../../test/harness/database.js';
import { tableCsv } from '../domain/table.js';
import { costReportTable, wasteTable } from '../http/report-tables.js';
import { ExplainRestorationCost } from './explain-restoration-cost.js';
import { ListRestorations } from './list-restorations.js';
import { ReportRestorationCosts } from './report-restoration-costs.js';
import { ReportTemplateUsage } from './report-template-usage.js';
import { ReportWaste } from './report-waste.js';

let database: TestDatabase;
let dataSource: DataSource;
let uow: UnitOfWork;

beforeAll(async () => {
  database = await createTestDatabase();
  const owner = await asOwner(database.url);
  await fillBook(owner);
  await owner.end();
  dataSource = await testDataSource(database.url);
  uow = new UnitOfWork(dataSource);
});

afterAll(async () => {
  await dataSource.destroy();
  await database.drop();
});

describe('the report of what restorations cost', () => {
  const report = (query: Parameters<ReportRestorationCosts['run']>[1], who = actor) =>
    new ReportRestorationCosts(uow).run(who, query);

  it.each(['template', 'reason', 'dentist', 'month', 'template,reason,dentist,month'])(
    'by %s adds up to the total, and the total to the visits, to the cent',
    async (groupBy) => {
      const { rows, totals, visitsMaterialCost } = await report({ groupBy });
      expect(totals.total).toBe('14.00');
      expect(visitsMaterialCost).toBe('14.00');
      const added = (of: (row: (typeof rows)[number]) => string) =>
        sum(rows.map((row) => money(of(row))));
      expect(added((row) => row.total)).toBe(money(totals.total));
      expect(added((row) => row.ownCost)).toBe(money(totals.ownCost));
      expect(added((row) => row.sharedCost)).toBe(money(totals.sharedCost));
      expect(added((row) => row.retakeCost)).toBe(money(totals.retakeCost));
      for (const row of [...rows, totals]) {
        expect(sum(row.categories.map((c) => money(c.cost)))).toBe(money(row.total));
      }
    },
  );

  it('shows the spread of costs as amounts that were really paid', async () => {
    const { rows } = await report({ groupBy: 'template' });
    expect(
      rows.map(({ templateName, restorations, mean, min, p10, p50, p90, max }) => [
        templateName,
        restorations,
        mean,
        min,
        p10,
        p50,
        p90,
        max,
      ]),
    ).toEqual([
      ['=Posterior filling', 2, '5.67', '3.33', '3.33', '3.33', '8.00', '8.00'],
      ['Front filling', 2, '1.34', '1.33', '1.33', '1.33', '1.34', '1.34'],
    ]);
  });

  it('leaves reversed visits out and is narrowed by day, reason and dentist', async () => {
    expect((await report({ from: '2026-04-01' })).totals.total).toBe('8.00');
    expect((await report({ to: '2026-03-31' })).totals.restorations).toBe(3);
    const cosmetic = await report({ reason: 'cosmetic' });
    expect([cosmetic.totals.total, cosmetic.visitsMaterialCost]).toEqual(['9.33', null]);
    const jon = await report({ dentistId: idOf.person(2) });
    expect([jon.totals.total, jon.visitsMaterialCost]).toEqual(['8.00', '8.00']);
  });

  it('of nothing is a total of nothing', async () => {
    const { rows, totals } = await report({}, stranger);
    expect(rows).toEqual([]);
    expect(totals).toMatchObject({ restorations: 0, total: '0.00', mean: '0.00', categories: [] });
  });

  it('refuses to group by what it does not know', async () => {
    await expect(report({ groupBy: 'tooth' })).rejects.toMatchObject({
      fields: [{ field: 'groupBy' }],
    });
  });

  it('goes into a spreadsheet without becoming a formula', async () => {
    const found = await report({ groupBy: 'template' });
    const [header, first] = tableCsv(costReportTable(found, {})).split('\r\n');
    expect(header).toContain('template,restorations,visits,total,mean');
    expect(first).toBe(
      "'=Posterior filling,2,2,11.33,5.67,3.33,3.33,3.33,8.00,8.00,11.00,0.33,2.00,EUR,1.33,10.00",
    );
  });
});

describe('restorations', () => {
  const list = (query: Parameters<ListRestorations['run']>[1]) =>
    new ListRestorations(uow).run(actor, query);

  it('come the dearest first, in the notation of the practice, page by page', async () => {
    const first = await list({ sort: 'cost', limit: '3' });
    const rest = await list({ sort: 'cost', limit: '3', cursor: first.nextCursor ?? '' });
    expect([...first.items, ...rest.items].map((r) => [r.cost, r.tooth])).toEqual([
      ['8.00', '19'],
      ['3.33', '19'],
      ['1.34', '8'],
      ['1.33', '8'],
    ]);
    expect(rest.nextCursor).toBeNull();
  });

  it('of a reversed visit are shown only when asked for', async () => {
    expect((await list({})).items).toHaveLength(4);
    expect((await list({ visitId: idOf.visit(3) })).items).toMatchObject([{ reversed: true }]);
  });
});

describe('where the cost of a restoration comes from', () => {
  const explain = (n: number, who = actor) =>
    new ExplainRestorationCost(uow).run(who, idOf.restoration(n));

  it('is its share of every line, down to the delivery', async () => {
    const found = await explain(1);
    expect(found).toMatchObject({
      cost: '1.34',
      visitCost: '6.00',
      estimated: false,
      ownLines: [],
    });
    expect(found.sharedLines.map((l) => [l.belongsTo, l.cost, l.share])).toEqual([
      ['tooth', '2.00', '1.00'],
      ['visit', '1.00', '0.333334'],
    ]);
    expect([found.exactCost, found.rounding]).toEqual(['1.333334', '0.006666']);
    expect(found.sharedLines[0]?.sources).toMatchObject([
      {
        movementId: idOf.movement(4),
        direction: 'used',
        sureness: 'assumed',
        packPrice: '100.00',
        supplier: { name: 'Northgate Supplies' },
      },
    ]);
  });

  it('adds up over the restorations of the visit', async () => {
    const all = await Promise.all([1, 2, 3].map((n) => explain(n)));
    expect(sum(all.map((r) => money(r.exactCost)))).toBe(money('6'));
    expect(sum(all.map((r) => money(r.cost)))).toBe(money('6'));
  });

  it('marks what is only an estimate', async () => {
    const found = await explain(4);
    expect(found.estimated).toBe(true);
    expect(found.ownLines.map((l) => [l.attempt, l.cost, l.estimatedCost, l.shortfall])).toEqual([
      [1, '5.00', '0.00', '0'],
      [2, '2.00', '0.00', '0'],
      [1, '1.00', '1.00', '0.1'],
    ]);
  });

  it('is not told to another practice', async () => {
    await expect(explain(1, stranger)).rejects.toThrow('no restoration');
  });
});

describe('use and waste', () => {
  it('compares what was used with what the template plans', async () => {
    const { rows } = await new ReportTemplateUsage(uow).run(actor, {});
    expect(
      rows.map((r) => [r.templateName, r.consumable.name, r.planned, r.dispensed, r.latest]),
    ).toEqual([
      ['=Posterior filling', 'Paste', '0.5', '0.5', true],
      ['=Posterior filling', 'Adhesive', '0.066667', '0.066667', true],
      ['Front filling', 'Paste', '0.1', '0.1', false],
      ['Front filling', 'Adhesive', '0.033333', '0.033333', false],
    ]);
  });

  it('tells what was thrown away, left over and done again', async () => {
    const report = await new ReportWaste(uow).run(actor, {});
    expect(report.writeOffs).toEqual([
      {
        month: '2026-04',
        reason: 'wrong shade opened',
        category: 'paste',
        unit: 'g',
        quantity: '0.4',
        cost: '4.00',
      },
    ]);
    expect(report.chairsideCost).toBe('7.00');
    expect(report.retakes).toEqual({ restorations: 1, extraAttempts: 1, cost: '2.00' });
    expect(report.wrongShade.total).toBe('6.00');
    expect(tableCsv(wasteTable(report, {})).split('\r\n')[1]).toBe(
      'written off,2026-04,wrong shade opened,paste,g,0.4,4.00,EUR',
    );
  });
});
