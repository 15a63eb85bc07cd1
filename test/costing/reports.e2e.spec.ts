import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import ExcelJS from 'exceljs';
import type pg from 'pg';
import {
  deliveryLine,
  openSmallBook,
  restoration,
  type SmallBook,
  TestService,
  visitBody,
} from '../book/book.js';
import { asOwner } from '../harness/database.js';

interface Figures {
  readonly restorations: number;
  readonly actualCost: string;
  readonly standardCost: string;
  readonly difference: string;
  readonly priceVariance: string;
  readonly usageVariance: string;
  readonly wasteCost: string;
  readonly retakeCost: string;
  readonly rounding: string;
}

let service: TestService;
let owner: pg.Client;
let s: SmallBook;
let visitIds: string[];

const usage = (s: SmallBook, dispensed: string, placed: string) => [
  { line: `r1/a1/5/${s.paste.id}`, dispensed, placed },
];

/** Two deliveries at two prices, and ten visits that use more paste than the template says. */
beforeAll(async () => {
  service = await TestService.start();
  owner = await asOwner(service.databaseUrl);
  s = await openSmallBook(service, 'reports');
  const lines = (price: string) =>
    [s.etchant, s.adhesive, s.paste, s.capsule, s.strip, s.bib].map((item) =>
      deliveryLine(item, s.store, 1, price, { expiresOn: '2029-12-31' }),
    );
  await s.book.deliver(s.supplier, '2026-01-05', lines('40'));
  visitIds = [];
  for (let n = 0; n < 10; n += 1) {
    const day = `2026-0${2 + Math.floor(n / 4)}-1${n % 4}`;
    const body = visitBody(s, {
      visitedOn: day,
      chartReference: `C-${n}`,
      costShareKey: ['equal', 'minutes', 'surfaces'][n % 3],
      restorations: [
        restoration(s),
        restoration(s, { tooth: '22', surfaces: 'MD', reason: n % 2 ? 'cosmetic' : 'wear' }),
        ...(n === 3 ? [restoration(s, { templateId: s.capsuleTemplate, shades: [] })] : []),
        ...(n === 5 ? [restoration(s, { tooth: '23', attempts: 2 })] : []),
      ],
      usage: [
        ...usage(s, '0.084', '0.048'),
        { line: `r2/a1/5/${s.paste.id}`, dispensed: '0.084', placed: '0.048' },
      ],
    });
    visitIds.push((await s.book.done<{ id: string }>('POST', '/visits', body)).id);
    if (n === 4) await s.book.deliver(s.supplier, '2026-03-11', lines('50'));
  }
});

afterAll(async () => {
  await owner.end();
  await service.stop();
});

const get = <T>(path: string) => s.book.done<T>('GET', path);
const micro = (text: string) => {
  const [whole = '', fraction = ''] = text.replace('-', '').split('.');
  const size = BigInt(whole + fraction.padEnd(6, '0'));
  return text.startsWith('-') ? -size : size;
};

describe('variances', () => {
  it.each(['template', 'reason', 'dentist', 'month', 'template,reason,month', 'restoration'])(
    'by %s make up the difference, and add up, to the millionth',
    async (groupBy) => {
      const { rows, totals } = await get<{ rows: Figures[]; totals: Figures }>(
        `/reports/variances?groupBy=${groupBy}`,
      );
      for (const row of [...rows, totals]) {
        expect(micro(row.actualCost) - micro(row.standardCost)).toBe(micro(row.difference));
        expect(micro(row.priceVariance) + micro(row.usageVariance)).toBe(micro(row.difference));
      }
      const keys = ['actualCost', 'standardCost', 'priceVariance', 'wasteCost', 'retakeCost'];
      for (const key of keys as (keyof Figures)[]) {
        const sum = rows.reduce((all, row) => all + micro(String(row[key])), 0n);
        expect([key, sum]).toEqual([key, micro(String(totals[key]))]);
      }
      expect(totals.restorations).toBe(22);
    },
  );

  it('cost exactly what the lines cost, and with the rounding what the report says', async () => {
    const { totals } = await get<{ totals: Figures }>('/reports/variances');
    const { rows } = await owner.query<{ cost: string }>(
      `SELECT trim_scale(sum(u.cost))::text AS cost FROM usage_lines u`,
    );
    expect(micro(totals.actualCost)).toBe(micro(rows[0]?.cost ?? ''));
    const costs = await get<{ totals: { total: string } }>('/reports/restoration-costs');
    expect(micro(totals.actualCost) + micro(totals.rounding)).toBe(micro(costs.totals.total));
  });

  it('have the price at what was paid less, and the usage at what was used more', async () => {
    const { totals } = await get<{ totals: Figures }>('/reports/variances');
    // Everything came from the delivery at 40; the current price is that at 50.
    const used = micro(totals.actualCost);
    const expected = (used * 40n - used * 50n) / 40n;
    const off = micro(totals.priceVariance) - expected; // prices are in millionths
    expect(off > -1000n && off < 1000n).toBe(true);
    expect(micro(totals.usageVariance) > 0n).toBe(true);
  });

  it('keep to the chosen restorations of a visit', async () => {
    const all = await get<{ rows: (Figures & { reason: string })[] }>(
      '/reports/variances?groupBy=reason',
    );
    const one = await get<{ totals: Figures }>('/reports/variances?reason=cosmetic');
    const row = all.rows.find((each) => each.reason === 'cosmetic');
    expect(one.totals.actualCost).toBe(row?.actualCost);
    const two = await get<{ rows: Figures[] }>('/reports/variances?groupBy=restoration&limit=2');
    expect(two.rows).toHaveLength(2);
  });

  it('are refused by what is unknown', async () => {
    const answer = await s.book.ask('GET', '/reports/variances?groupBy=tooth');
    expect([answer.status, answer.body.errors]).toMatchObject([400, [{ field: 'groupBy' }]]);
  });
});

describe('a template against reality', () => {
  it('is suggested anew with one tap, and then agrees', async () => {
    const path = `/reports/template-usage/${s.template}/suggestion?last=200`;
    const found = await get<{
      restorations: number;
      lines: { sentence: string | null; changed: boolean; suggestedDispensed: string }[];
      suggestedVersion: object | null;
    }>(path);
    expect(found.restorations).toBe(21);
    expect(found.lines.at(-1)).toMatchObject({ changed: true, unit: 'g', dispensed: '0.06' });
    expect(found.lines.at(-1)?.sentence).toMatch(
      /^The template says 0\.06 g, the last 21 used 0\.08\d g\.$/,
    );
    expect(found.suggestedVersion).not.toBeNull();
    const versions = `/procedure-templates/${s.template}/versions`;
    const written = await s.book.done<{ version: number; lines: { dispensed: string }[] }>(
      'POST',
      versions,
      found.suggestedVersion,
    );
    expect(written.version).toBe(2);
    expect(written.lines.at(-1)?.dispensed).toBe(found.lines.at(-1)?.suggestedDispensed);
    const next = await get<{ restorations: number; suggestedVersion: object | null }>(path);
    expect(next).toMatchObject({ restorations: 0, suggestedVersion: null });
  });

  it('of an unknown template is not found', async () => {
    const id = '01900000-0000-7000-8000-000000000000';
    const answer = await s.book.ask('GET', `/reports/template-usage/${id}/suggestion`);
    expect(answer.status).toBe(404);
  });
});

describe('price changes', () => {
  it('tell the rise and what it did to the cost', async () => {
    const found = await get<{
      effect: string;
      consumables: {
        consumable: { name: string };
        change: string;
        effect: string;
        changes: { price: string; priceBefore: string; used: string; effect: string }[];
      }[];
    }>('/reports/price-changes?from=2026-01-01&to=2026-12-31');
    const paste = found.consumables.find((each) => each.consumable.name === 'Paste');
    expect(paste?.change).toBe('0.2500');
    const [change] = paste?.changes ?? [];
    expect([change?.priceBefore, change?.price]).toEqual(['10.00', '12.50']);
    const { rows } = await owner.query<{ used: string }>(
      `SELECT trim_scale(sum(charged))::text AS used FROM usage_lines u
       JOIN visits v ON v.id = u.visit_id
       WHERE u.consumable_id = $1 AND v.visited_on >= '2026-03-11'`,
      [s.paste.id],
    );
    expect(change?.used).toBe(rows[0]?.used);
    expect(micro(change?.effect ?? '')).toBe((micro(rows[0]?.used ?? '') * 5n) / 2n);
    const sum = found.consumables.reduce((all, each) => all + micro(each.effect), 0n);
    expect(micro(found.effect)).toBe(sum);
  });
});

describe('habits', () => {
  it('are ranked by what changing them saves in a year', async () => {
    const holdings = await owner.query<{ id: string }>(
      `SELECT h.id FROM holdings h JOIN layers l ON l.id = h.layer_id
       WHERE l.consumable_id = $1 AND h.on_hand > 0 ORDER BY h.id LIMIT 1`,
      [s.strip.id],
    );
    await s.book.done('POST', '/stock/write-offs', {
      holdingId: holdings.rows[0]?.id,
      quantity: '2',
      reason: 'wrong shade opened',
    });
    const found = await get<{
      days: number;
      habits: { rank: number; kind: string; cost: string; savedPerYear: string }[];
    }>('/reports/habits?from=2026-01-01&to=2026-12-31&limit=50');
    expect(found.days).toBe(365);
    const kinds = new Set(found.habits.map((habit) => habit.kind));
    expect([...kinds].sort()).toEqual(
      expect.arrayContaining(['more than the template', 'residue of single doses', 'retakes']),
    );
    found.habits.forEach((habit, i) => {
      expect(habit.rank).toBe(i + 1);
      expect(habit.savedPerYear).toBe(habit.cost);
      const next = found.habits[i + 1];
      if (next) expect(micro(habit.cost) >= micro(next.cost)).toBe(true);
    });
    const half = await get<{ habits: { cost: string; savedPerYear: string }[] }>(
      '/reports/habits?from=2026-01-01&to=2026-03-14&limit=1',
    );
    const [first] = half.habits;
    expect(half.habits).toHaveLength(1);
    expect(micro(first?.savedPerYear ?? '')).toBe(micro(first?.cost ?? '') * 5n);
  });
});

const REPORTS = [
  'restoration-costs',
  'template-usage',
  'waste',
  'variances',
  'chair-time',
  'price-changes',
  'habits',
];

describe('files', () => {
  const raw = (path: string, accept?: string) =>
    service.app.inject({
      method: 'GET',
      url: `/api/reports/${path}`,
      headers: {
        cookie: `traybook_session=${s.book.practice.people.owner.cookie}`,
        ...(accept ? { accept } : {}),
      },
    });

  it.each(REPORTS)('%s comes as CSV and as a workbook, by path or by Accept', async (report) => {
    const csv = await raw(`${report}.csv`);
    expect(csv.headers['content-type']).toBe('text/csv; charset=utf-8');
    expect((await raw(report, 'text/csv')).body).toBe(csv.body);
    const [header = '', ...lines] = csv.body.trimEnd().split('\r\n');
    const xlsx = await raw(`${report}.xlsx`);
    expect(xlsx.headers['content-disposition']).toBe(`attachment; filename="${report}.xlsx"`);
    const type = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';
    expect(xlsx.headers['content-type']).toBe(type);
    const book = new ExcelJS.Workbook();
    await book.xlsx.load(xlsx.rawPayload as unknown as ArrayBuffer);
    const [sheet] = book.worksheets;
    expect(sheet?.rowCount).toBe(lines.length + 1);
    const names = ((sheet?.getRow(1).values ?? []) as unknown[]).slice(1);
    expect(names.join(',')).toBe(header.replaceAll('"', ''));
    expect((await raw(report, type)).headers['content-type']).toBe(type);
    expect((await raw(report, 'application/json')).json()).toBeInstanceOf(Object);
  });

  it('have numbers and days in a workbook, and never a formula', async () => {
    await s.book.done('PATCH', `/procedure-templates/${s.template}`, { name: '=1+1' });
    const xlsx = await raw('variances.xlsx?groupBy=restoration');
    const book = new ExcelJS.Workbook();
    await book.xlsx.load(xlsx.rawPayload as unknown as ArrayBuffer);
    const row = book.worksheets[0]?.getRow(2);
    expect(row?.getCell(1).value).toBeInstanceOf(Date);
    expect(typeof row?.getCell(7).value).toBe('number');
    const values = (book.worksheets[0]?.getColumn(3).values ?? []).slice(2);
    expect(values).toContain('=1+1');
    book.worksheets[0]?.eachRow((each) => {
      each.eachCell((cell) => {
        expect([cell.address, cell.type]).not.toEqual([cell.address, ExcelJS.ValueType.Formula]);
      });
    });
    expect((await raw('restoration-costs.csv')).body).toContain("'=1+1");
  });

  it.each(REPORTS)('%s is for printing too', async (report) => {
    const pdf = await raw(`${report}.pdf`);
    expect(pdf.headers['content-disposition']).toBe(`attachment; filename="${report}.pdf"`);
    expect(pdf.rawPayload.subarray(0, 5).toString()).toBe('%PDF-');
    expect(pdf.rawPayload.subarray(-6).toString().trim()).toBe('%%EOF');
    const asked = await raw(report, 'application/pdf');
    expect(asked.headers['content-type']).toBe('application/pdf');
  });
});
