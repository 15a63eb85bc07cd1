import { afterAll, afterEach, beforeAll, describe, expect, it } from '@jest/globals';
import type { Page } from 'playwright-core';
import { openPricedBook, type PricedBook } from '../pricing/pricing-book.js';
import {
  eventually,
  expectAccessible,
  expectAccessibleLooks,
  FixedClock,
  openBrowser,
  type PageOptions,
  shot,
  signIn,
  startWebService,
  type TestBrowser,
  TODAY,
  type WebService,
} from './harness/index.js';
import { dialogOf, errorAt, openAs } from './setup-steps.js';

let browser: TestBrowser;
let web: WebService;
let book: PricedBook;

beforeAll(async () => {
  const clock = new FixedClock(TODAY);
  [browser, web] = await Promise.all([openBrowser(), startWebService({ clock })]);
  book = await openPricedBook(web.service, 'mill');
});

afterEach(() => browser.closePages());

afterAll(async () => {
  await browser.close();
  await web.stop();
});

let tries = 0;

/** A name that no other test, and no second try of this one, has used. */
const fresh = (what: string) => `${what}-${++tries}`;

const open = (role: string, path: string, options: PageOptions = {}): Promise<Page> =>
  openAs({ browser, web }, role, path, options);

const save = (page: Page) => dialogOf(page).getByRole('button', { name: 'Save' }).click();

const settled = (page: Page) => page.locator('table[aria-busy="false"]').first().waitFor();

const codes = (page: Page) => page.getByRole('table').getByRole('link').allTextContents();

interface History {
  readonly versions: readonly { readonly validFrom: string; readonly fee: string }[];
}

describe('fees', () => {
  it('are found by code or name, and show the price of a day', async () => {
    const page = await open('dentist', '/setup');
    await page.getByRole('link', { name: 'Fees', exact: true }).click();
    await page.waitForURL(`${web.url}/setup/fees`);
    await page.getByRole('link', { name: 'FRONT-1' }).waitFor();
    expect(await codes(page)).toEqual(expect.arrayContaining(['FRONT-1', 'LOOKS-1']));
    await page.getByText('Front tooth composite, made because of looks').waitFor();
    await page.getByLabel('Search').fill('looks');
    await page.waitForURL(/q=looks/);
    await eventually(() => codes(page), ['LOOKS-1']);
    await settled(page);
    await page.getByLabel('Price on').fill('2025-12-31');
    await page.waitForURL(/on=2025-12-31/);
    await page.getByText('no price yet').waitFor();
    await page.getByRole('columnheader', { name: 'Price on 31 Dec 2025' }).waitFor();
    await settled(page);
    await page.getByLabel('Shown').selectOption('retired');
    await page.waitForURL(/show=retired/);
    await page.getByText('Nothing matches').waitFor();
  });

  it('are made by points with every digit in sight, by the keyboard', async () => {
    const page = await open('dentist', '/setup/fees');
    await page.getByRole('link', { name: 'FRONT-1' }).waitFor();
    await page.getByRole('button', { name: 'Add a fee' }).focus();
    await page.keyboard.press('Enter');
    const form = dialogOf(page);
    await form.getByLabel('Code').waitFor();
    await save(page);
    expect(await errorAt(form.getByLabel('Code'))).toContain('Please fill this in');
    expect(await errorAt(form.getByLabel('Fee', { exact: false }).last())).toContain('Please fill');
    const code = fresh('SIDE');
    await form.getByLabel('Code').fill(code);
    await form.getByLabel('Class').fill('basic');
    await form.getByLabel('Class').press('Tab');
    await form.getByLabel('Name').fill('Side tooth, two surfaces');
    await form.getByLabel('Stated as').selectOption('points');
    await form.getByLabel('Points', { exact: true }).fill('297');
    await form.getByLabel('Value of one point').fill('0,0562421');
    await form.getByLabel('Factor').fill('3.5');
    // German federal ordinance on dentists' fees (BGBl. 1987 I 2316): 297 points at 3.5 are 58.46.
    await form.getByText('297 × 0.0562421 × 3.5 = 58.46366295').waitFor();
    await form.getByText('€58.46', { exact: true }).waitFor();
    await form.getByText('Rounding before the factor already would give €58.45.').waitFor();
    await shot(page, 'fee-points');
    await form.getByLabel('Factor').press('Enter');
    await page.waitForURL(/\/setup\/fees\/[0-9a-f-]{36}$/);
    await page.getByRole('heading', { level: 1, name: code }).waitFor();
    await page.getByText('297 × 0.0562421 × 3.5').waitFor();
    await eventually(() => page.locator('dd').first().textContent(), '€58.46');
  });

  it('that are taken already are refused beside their field, and nothing is kept', async () => {
    const page = await open('dentist', `/setup/fees/${book.cosmeticFee}?edit=1`, {
      refusals: [409],
    });
    const form = dialogOf(page);
    await form.getByLabel('Code').fill('FRONT-1');
    await save(page);
    expect(await errorAt(form.getByLabel('Code'))).toContain('Is already in use');
    await form.getByRole('button', { name: 'Cancel' }).click();
    await page.waitForURL(`${web.url}/setup/fees/${book.cosmeticFee}`);
    await page.getByRole('heading', { level: 1, name: 'LOOKS-1' }).waitFor();
  });

  it('get new prices from a day on, and keep the ones before', async () => {
    const body = { code: fresh('BACK'), name: 'Back tooth', fee: '250', validFrom: '2026-01-01' };
    const { id } = await book.book.done('POST', '/fees', body);
    const page = await open('dentist', `/setup/fees/${id}`);
    await page.getByRole('button', { name: 'New price from a day on' }).click();
    const form = dialogOf(page);
    await form.getByLabel('From this day on').fill('2026-07-01');
    await form.getByLabel('Fee').fill('260.005');
    await save(page);
    expect(await errorAt(form.getByLabel('Fee'))).toContain('Must not be finer than €0.01');
    await form.getByLabel('Fee').fill('260');
    await save(page);
    await form.waitFor({ state: 'detached' });
    await page.getByText('Not yet').waitFor();
    const row = page.getByRole('row', { name: 'Counts today' });
    expect(await row.textContent()).toContain('€250.00');
    const { versions } = await book.book.done<History>('GET', `/fees/${id}`);
    expect(versions.map(({ validFrom, fee }) => `${validFrom} ${fee}`)).toEqual([
      '2026-07-01 260.00',
      '2026-01-01 250.00',
    ]);
    await expectAccessible(page);
    await shot(page, 'fee-versions');
  });
});

describe('what is left of a plan', () => {
  it('is entered by the manager at the desk, and shown as it was on a day', async () => {
    const chart = fresh('C');
    const before = { asOf: '2026-05-01', deductibleLeft: '50', maximumLeft: '1000' };
    const first = { planId: book.plan, chartReference: chart, ...before };
    await book.book.done('POST', '/plan-balances', first);
    const page = await open('manager', '/setup/balances');
    await page.getByText('C-2001').waitFor();
    await page.getByRole('button', { name: 'Enter what is left' }).click();
    const form = dialogOf(page);
    await form.getByLabel('Chart reference').fill(chart);
    await form.getByLabel('Plan').selectOption(book.plan);
    await form.getByLabel('So it was on').fill('2026-05-05');
    await form.getByLabel('Deductible left').fill('60');
    await form.getByLabel('Maximum left').fill('much');
    await save(page);
    expect(await errorAt(form.getByLabel('So it was on'))).toContain('Must not be after today');
    expect(await errorAt(form.getByLabel('Deductible left'))).toContain('more than €50.00');
    expect(await errorAt(form.getByLabel('Maximum left'))).toContain('Please write a number');
    await expectAccessible(page);
    await form.getByLabel('So it was on').fill('2026-05-04');
    await form.getByLabel('Deductible left').fill('0');
    await form.getByLabel('Maximum left').fill('860,50');
    await save(page);
    await page.waitForURL(new RegExp(`chart=${chart}`));
    await page.getByRole('heading', { name: `Chart ${chart}: what counts` }).waitFor();
    await eventually(() => page.locator('dd').nth(1).textContent(), '€860.50');
    const rows = page.getByRole('table').locator('tbody tr');
    await eventually(() => rows.count(), 2);
    await settled(page);
    await shot(page, 'balances-chart');
    await page.getByLabel('As it was known on').fill('2026-05-02');
    await page.waitForURL(/on=2026-05-02/);
    await eventually(() => page.locator('dd').nth(1).textContent(), '€1,000.00');
    await eventually(() => rows.count(), 1);
  });
});

describe('the rate of the chairs', () => {
  it('is entered by the owner, who sees at once what a minute costs', async () => {
    const practice = fresh('lake');
    await web.service.openPractice(practice);
    const page = await browser.open();
    await signIn(page, web.url, `${practice}.owner`, '/setup/rates');
    await page.getByText('Nobody has said yet what the chair costs').waitFor();
    await page.getByText('Idle time is not loaded on the work').waitFor();
    await page.getByRole('button', { name: 'Enter a rate' }).click();
    const form = dialogOf(page);
    await form.getByLabel('Hours a year that can really').fill('1.01');
    await form.getByLabel('Hours a year of all assistants').fill('1600');
    await save(page);
    expect(await errorAt(form.getByLabel('What a year of the chairs costs'))).toContain('a number');
    expect(await errorAt(form.getByLabel('Hours a year that can really'))).toContain('whole');
    expect(await errorAt(form.getByLabel('A minute of an assistant'))).toContain('Please say');
    await form.getByLabel('What a year of the chairs costs').fill('168000');
    await form.getByLabel('Hours a year that can really').fill('3200');
    await form.getByText('€168,000.00 in 3,200 hours: €0.875 a minute, €52.50 an hour.').waitFor();
    await form.getByText('40 minutes at the chair then cost €35.00.').waitFor();
    await form.getByLabel('A minute of an assistant').fill('0.55');
    await expectAccessible(page);
    await shot(page, 'rate-form');
    await save(page);
    await form.waitFor({ state: 'detached' });
    await page.getByText('Counts today').waitFor();
    await eventually(() => page.locator('dd').first().textContent(), '€0.875');
    await shot(page, 'rates');
  });
});

describe('who may', () => {
  it.each(['manager', 'auditor'])(
    'see fees, plans and rates without changing them: the %s',
    async (role) => {
      const page = await open(role, '/setup/fees?new=1');
      await page.getByRole('link', { name: 'FRONT-1' }).waitFor();
      const screens: readonly (readonly [string, string])[] = [
        [`/setup/fees/${book.insuredFee}?new=1`, 'Prices from day to day'],
        ['/setup/plans?new=1', 'Plans'],
        [`/setup/plans/${book.plan}?new=fee`, 'What it says about fees'],
        ['/setup/rates?new=1', 'What the chair costs'],
      ];
      for (const [path, heading] of screens) {
        await page.goto(`${web.url}${path}`);
        await page.getByRole('heading', { name: heading, exact: true }).waitFor();
        await page.waitForLoadState('networkidle');
        expect(await dialogOf(page).count()).toBe(0);
        const buttons = await page.locator('#content').getByRole('button').allTextContents();
        expect(buttons.filter((words) => words !== 'Print')).toEqual([]);
      }
      await page.goto(`${web.url}/setup/balances`);
      await page.getByText('C-2001').waitFor();
      const enter = page.getByRole('button', { name: 'Enter what is left' });
      expect(await enter.count()).toBe(role === 'manager' ? 1 : 0);
    },
  );
});

describe('looks', () => {
  it('are accessible in light and dark, wide and narrow', async () => {
    const page = await open('owner', '/setup/fees');
    const screens = {
      fees: '/setup/fees',
      'fees-new': '/setup/fees?new=1',
      fee: `/setup/fees/${book.insuredFee}`,
      balances: '/setup/balances',
      'balances-chart': '/setup/balances?chart=C-2001',
      'balances-new': '/setup/balances?new=1',
    };
    for (const [name, path] of Object.entries(screens)) {
      await page.goto(`${web.url}${path}`);
      await page.locator(path.includes('new') ? 'form' : '#content h1').waitFor();
      await expectAccessibleLooks(page, name);
    }
  }, 300_000);
});
