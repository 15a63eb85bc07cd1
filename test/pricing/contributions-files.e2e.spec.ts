import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import ExcelJS from 'exceljs';
import { isAllowed } from '#lib/access';
import { ROLES } from '#lib/platform';
import { ContributionBook, cents, type Report } from './contribution-book.js';
import { openPricedBook, textOfPdf } from './pricing-book.js';

let b: ContributionBook;

beforeAll(async () => {
  b = await ContributionBook.open('supply');
});

afterAll(() => b.stop());

interface SupplyFigures {
  readonly fees: string;
  readonly income: string;
  readonly material: string;
  readonly materialShare: string | null;
  readonly bought: string;
  readonly boughtShare: string | null;
  readonly waste: string;
  readonly wasteShare: string | null;
  readonly withoutFeeMaterial: string;
}

interface Supply {
  readonly shareOf: string;
  readonly rows: readonly (SupplyFigures & { readonly month: string })[];
  readonly totals: SupplyFigures;
}

describe('the report of supply cost', () => {
  const supply = (query = '') => b.s.book.done<Supply>('GET', `/reports/supply-share${query}`);
  const share = (part: string, whole: string) => (cents(part) / cents(whole)).toFixed(4);

  it('has fees and material of the contributions, deliveries and write-offs by month', async () => {
    const { rows, totals } = await supply();
    const months = await b.report('groupBy=month');
    expect(rows.map((row) => row.month)).toEqual(['2026-07', '2026-06', '2026-05', '2026-03']);
    for (const row of rows) {
      const of = months.rows.find(({ month }) => month === row.month);
      const expected = of && [of.fee, of.income, of.material, of.withoutFeeMaterial];
      const nothing = ['0.00', '0.00', '0.00', '0.00'];
      const found = [row.fees, row.income, row.material, row.withoutFeeMaterial];
      expect(found).toEqual(expected ?? nothing);
      if (of) expect(row.materialShare).toBe(share(row.material, row.fees));
      else expect([row.materialShare, row.boughtShare, row.wasteShare]).toEqual([null, null, null]);
    }
    const spent = rows.map((row) => [row.month, row.bought, row.waste]);
    // 20 + 110 + 2 x 72 + 110 + 7 + 22.50 came in; ten of a hundred strips at 7.00 got wet.
    expect(spent).toEqual([
      ['2026-07', '0.00', '0.00'],
      ['2026-06', '0.00', '0.70'],
      ['2026-05', '0.00', '0.00'],
      ['2026-03', '413.50', '0.00'],
    ]);
    expect(totals).toMatchObject({ bought: '413.50', waste: '0.70' });
    expect(totals.boughtShare).toBe(share('413.50', totals.fees));
    const add = (of: 'fees' | 'income' | 'material') =>
      rows.reduce((sum, row) => sum + cents(row[of]), 0);
    expect([add('fees'), add('income'), add('material')]).toEqual(
      [totals.fees, totals.income, totals.material].map(cents),
    );
  });

  it('is of what was really paid when that is asked for, and of a period', async () => {
    const { shareOf, totals } = await supply('?shareOf=income&from=2026-06-01&to=2026-06-30');
    expect(shareOf).toBe('income');
    expect(totals.materialShare).toBe(share(totals.material, totals.income));
    expect(cents(totals.income)).toBeLessThan(cents(totals.fees));
    expect(totals).toMatchObject({ bought: '0.00', boughtShare: '0.0000', waste: '0.70' });
  });
});

describe('as files', () => {
  const file = async (path: string) => {
    const cookie = `traybook_session=${b.s.book.practice.people.manager.cookie}`;
    const answer = await b.service.app.inject({ url: `/api${path}`, headers: { cookie } });
    expect(answer.statusCode).toBe(200);
    return answer;
  };

  it.each([
    ['contributions', 'groupBy=reason,month', 'contribution'],
    ['supply-share', 'from=2026-05-01', 'material'],
  ])('%s is what the JSON says', async (name, query, amount) => {
    const path = `/reports/${name}`;
    const json = await b.s.book.done<{ rows: Record<string, string>[] }>('GET', `${path}?${query}`);
    const [header = '', ...lines] = (await file(`${path}.csv?${query}`)).body.trim().split('\r\n');
    const at = header.split(',').indexOf(amount);
    const wanted = json.rows.map((row) => row[amount]);
    expect(lines.map((line) => line.split(',')[at])).toEqual(wanted);

    const book = new ExcelJS.Workbook();
    const raw = (await file(`${path}.xlsx?${query}`)).rawPayload;
    await book.xlsx.load(raw as unknown as ArrayBuffer);
    const cells: unknown[] = [];
    const sheet = book.worksheets[0];
    sheet?.getRow(1).eachCell((cell, column) => {
      if (cell.value !== amount) return;
      sheet.getColumn(column).eachCell((each) => cells.push(each.value));
    });
    for (const text of wanted) expect(cells).toContain(Number(text));

    const words = textOfPdf((await file(`${path}.pdf?${query}`)).rawPayload);
    for (const text of wanted) {
      expect(words).toContain(Number(text).toLocaleString('en', { minimumFractionDigits: 2 }));
    }
    expect(words).toContain('Figures are planning aids.');
  });

  const inBoth = async (path: string) => {
    const join = path.includes('?') ? '&' : '?';
    return [await file(path), await file(`${path}${join}lang=de`)] as const;
  };

  it.each([
    'restoration-costs',
    'template-usage',
    'waste',
    'variances',
    'chair-time',
    'price-changes',
    'habits',
    'contributions',
    'supply-share',
  ])('%s speaks German: every column, and no number is another one', async (name) => {
    const [english, german] = (await inBoth(`/reports/${name}.csv`)).map(({ body }) =>
      body
        .trimEnd()
        .split('\r\n')
        .map((line) => line.split(',')),
    );
    const [head = [], ...rows] = english ?? [];
    const [kopf = [], ...zeilen] = german ?? [];
    expect(kopf).toHaveLength(head.length);
    const same = head.filter((each, i) => each === kopf[i] && !/^p\d\d$/.test(each));
    expect(same).toEqual([]);
    const numbers = (list: string[][]) =>
      list.map((row) => row.filter((c) => /^-?[\d.]+$/.test(c)));
    expect(numbers(zeilen)).toEqual(numbers(rows));
  });

  it('say what they were made for in German, on paper with German numbers', async () => {
    const path = '/reports/contributions';
    const query = 'groupBy=reason&from=2026-05-01&to=2026-07-31';
    const [plain, german] = await inBoth(`${path}.pdf?${query}`);
    const words = textOfPdf(german.rawPayload);
    for (const said of [
      'Was Restaurationen übrig lassen',
      '01.05.2026 bis 31.07.2026.',
      'Beträge in EUR.',
      'Alle Zahlen sind Planungshilfen.',
      'Seite 1 von 1',
      'Karies',
      'Zusammen',
    ]) {
      expect(words).toContain(said);
    }
    expect(words).not.toMatch(/Figures are|decay|Together/);
    expect(textOfPdf(plain.rawPayload)).toContain('2026-05-01 to 2026-07-31.');
    const { rows } = await b.s.book.done<Report>('GET', `${path}?${query}&lang=de`);
    for (const { fee } of rows) {
      const shown = Number(fee).toLocaleString('de', { minimumFractionDigits: 2 });
      expect(words).toContain(shown);
    }
    const [, workbook] = await inBoth(`${path}.xlsx?${query}`);
    const book = new ExcelJS.Workbook();
    await book.xlsx.load(workbook.rawPayload as unknown as ArrayBuffer);
    expect(book.worksheets.map(({ name }) => name)).toEqual([
      'Was Restaurationen übrig lassen',
      'Zu dieser Datei',
    ]);
    const [sheet] = book.worksheets;
    expect(sheet?.getRow(1).getCell(2).value).toBe('Restaurationen');
    expect(typeof sheet?.getRow(2).getCell(2).value).toBe('number');
    const refused = await b.s.book.ask('GET', `${path}.csv?lang=xx`, undefined, 'manager');
    expect([refused.status, refused.body.errors]).toMatchObject([400, [{ field: 'lang' }]]);
  });

  it.each([
    ['text/csv', 'text/csv; charset=utf-8'],
    ['application/pdf', 'application/pdf'],
    ['application/json', 'application/json; charset=utf-8'],
  ])('come in the form that Accept asks for: %s', async (accept, type) => {
    for (const path of ['/reports/contributions', '/reports/supply-share']) {
      const answer = await b.s.book.ask('GET', path, undefined, 'auditor', { headers: { accept } });
      expect([answer.status, answer.headers['content-type']]).toEqual([200, type]);
    }
  });
});

describe('who may read them', () => {
  it('are those who read costs, all of whom may read prices', async () => {
    for (const role of ROLES) {
      const allowed = isAllowed(role, 'costs.read');
      expect([role, isAllowed(role, 'pricing.read')]).toEqual([role, allowed]);
      for (const path of ['/reports/contributions', '/reports/supply-share']) {
        const { status } = await b.s.book.ask('GET', path, undefined, role);
        expect([role, path, status]).toEqual([role, path, allowed ? 200 : 403]);
      }
    }
  });

  it('are of one practice', async () => {
    const stranger = await openPricedBook(b.service, 'income2');
    const found = await stranger.book.done<Report>('GET', '/reports/contributions');
    expect([found.rows, found.totals.restorations]).toEqual([[], 0]);
    const supply = await stranger.book.done<Supply>('GET', '/reports/supply-share');
    expect(supply.rows).toMatchObject([{ month: '2026-03', fees: '0.00', bought: '413.50' }]);
  });
});
