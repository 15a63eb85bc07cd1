import { afterAll, afterEach, beforeAll, describe, expect, it } from '@jest/globals';
import type { Page } from 'playwright-core';
import { deliveryLine } from '../book/book.js';
import { asOwner } from '../harness/database.js';
import { sentOrder } from '../purchasing/foresight-answers.js';
import { openPlanningBook, type PlanningBook, TODAY } from '../purchasing/planning-book.js';
import {
  eventually,
  expectAccessible,
  expectAccessibleLooks,
  FixedClock,
  openBrowser,
  signIn,
  startWebService,
  type TestBrowser,
  type WebService,
} from './harness/index.js';

/** Half a year of visits is recorded first, which takes a slow machine a while. */
const PATIENCE = 240_000;

let browser: TestBrowser;
let web: WebService;
let s: PlanningBook;

beforeAll(async () => {
  [browser, web] = await Promise.all([
    openBrowser(),
    startWebService({ clock: new FixedClock(TODAY) }),
  ]);
  s = await openPlanningBook(web.service, 'view');
  const other = await s.book.supplier('Harbour Supplies');
  const owner = await asOwner(web.service.databaseUrl);
  const order = (day: string, expected: string, packs: number) =>
    sentOrder({ owner, s }, { supplier: other, day, expected }, packs);
  const came = (orderLineId: string, day: string, packs: number) =>
    s.book.deliver(other, day, [deliveryLine(s.bibBox, s.store, packs, '3.60', { orderLineId })]);
  await came(await order('2026-04-06', '2026-04-09', 2), '2026-04-08', 2);
  const parts = await order('2026-04-13', '2026-04-16', 2);
  await came(parts, '2026-04-15', 1);
  await came(parts, '2026-04-20', 1);
  await owner.end();
}, PATIENCE);

afterEach(() => browser.closePages());

afterAll(async () => {
  await browser.close();
  await web.stop();
});

async function open(
  path: string,
  role = 'manager',
  refusals: readonly number[] = [],
): Promise<Page> {
  const page = await browser.open({ refusals });
  await signIn(page, web.url, `view.${role}`, path);
  return page;
}

const settled = (page: Page, name: string) =>
  page.locator(`table[aria-label="${name}"][aria-busy="false"]`);

/** Nothing sticks out of a telephone. */
async function expectFits(page: Page): Promise<void> {
  await page.setViewportSize({ width: 390, height: 844 });
  await eventually(
    () =>
      page.evaluate(
        () => document.documentElement.scrollWidth <= document.documentElement.clientWidth,
      ),
    true,
  );
  await expectAccessible(page);
}

describe('what if', () => {
  it(
    'shows the shelf, then one item, and judges a bulk offer',
    async () => {
      const page = await open('/ordering/what-if');
      const table = settled(page, 'Service levels');
      await table.waitFor();
      expect(await table.locator('thead th').allTextContents()).toHaveLength(4);
      await page.getByText(/^Now: each item with the level|^Now: cycle service of 95%/).waitFor();
      await page.getByRole('img', { name: /^Average stock: €/ }).waitFor();
      // One item: its own levels stand in the table as well, and what is in force is marked.
      await page.getByRole('combobox', { name: 'For' }).fill('bib');
      await page.getByRole('option', { name: 'Patient bib' }).click();
      await page.waitForURL((url) => url.searchParams.get('item') === s.bib.id);
      await table.locator('th', { hasText: 'Order at' }).waitFor();
      const now = table.locator('tr[data-marked]');
      await eventually(
        async () => (await now.locator('td').first().textContent())?.trim(),
        '95% now',
      );
      // The offer starts with the item of the address.
      await page
        .getByRole('combobox', { name: 'Pack', exact: true })
        .selectOption({ label: 'Box of 50' });
      await page.getByLabel('Packs', { exact: true }).fill('ten');
      await page.getByLabel(/^Price of a pack/).fill('3,20');
      await page.getByRole('button', { name: 'Reckon' }).click();
      await page.getByText('Please write a whole number of packs').waitFor();
      await page.getByLabel('Packs', { exact: true }).fill('10');
      await page.getByRole('button', { name: 'Reckon' }).click();
      // Ten boxes of 50 at 3.20, where 3.60 was paid last: 4.00 less on paper.
      await page.getByText(/the price list promises €4\.00\.$/).waitFor();
      const way = page.getByRole('table', { name: 'From the usual price to the real saving' });
      const figures = (await way.locator('td').allTextContents()).slice(0, 6);
      const cents = figures.map((text) => Math.round(Number(text.replace(/[^\d.-]/g, '')) * 100));
      const [usual = 0, offer = 0, ...steps] = cents;
      const real = steps.pop() ?? 0;
      expect([usual, offer]).toEqual([3600, -3200]);
      // To a cent of rounding per line.
      const sum = [usual, offer, ...steps].reduce((a, b) => a + b, 0);
      expect(Math.abs(sum - real)).toBeLessThanOrEqual(3);
      await expectAccessibleLooks(page, 'foresight-what-if');
      await expectFits(page);
    },
    PATIENCE,
  );
});

describe('suppliers', () => {
  it(
    'stand side by side, with what the same costs at each',
    async () => {
      const page = await open('/ordering/suppliers');
      const sides = settled(page, 'Side by side');
      await sides.waitFor();
      const names = () => sides.locator('tbody td:first-child').allTextContents();
      expect((await names()).sort()).toEqual(['Harbour Supplies', 'Northgate Supply']);
      await page.getByText('3 days stated; no order complete yet.').waitFor();
      await page.getByText('2 days, nine in ten within 5, from 2 orders; 3 days stated.').waitFor();
      const prices = settled(page, 'The same at different suppliers');
      expect(await prices.locator('tbody tr').count()).toBe(2);
      await prices.getByText('cheapest', { exact: true }).waitFor();
      await page.getByRole('link', { name: 'Show what only one sells as well' }).click();
      await page.waitForURL((url) => url.searchParams.get('prices') === 'all');
      await eventually(async () => (await prices.locator('tbody tr').count()) > 2, true);
      await expectAccessibleLooks(page, 'foresight-suppliers');
      await expectFits(page);
    },
    PATIENCE,
  );
});

describe('proof', () => {
  it(
    'replays the history, shows how far it is, and both sides in the end',
    async () => {
      const page = await open('/ordering/proof', 'manager', [400]);
      await page.getByLabel('From', { exact: true }).fill('2026-05-01');
      await page.getByRole('button', { name: 'Replay the history' }).click();
      await page.getByText(/Must be from 2025-12-29 to 2026-04-06/).waitFor();
      await page.getByLabel('From', { exact: true }).fill('');
      await page.getByRole('button', { name: 'Replay the history' }).click();
      await page.waitForURL((url) => url.searchParams.has('replay'));
      // It is reckoned in the background, a second or so of work.
      const verdict = page.getByText(/^Something was missing on \d+ item-days (instead|either)/);
      await verdict.waitFor({ timeout: 150_000 });
      const sums = page.getByRole('table', { name: 'In sum' });
      expect(await sums.locator('tbody tr').count()).toBe(7);
      await page.getByRole('img', { name: /^Stock value from/ }).waitFor();
      const items = settled(page, 'Item by item');
      // Of eight one was never there and never used.
      expect(await items.locator('tbody tr').count()).toBeGreaterThan(4);
      await page.getByText(/^On each day only what lies before it is known/).waitFor();
      await expectAccessibleLooks(page, 'foresight-proof');
      await expectFits(page);
    },
    PATIENCE,
  );

  it(
    'is there for whoever may see costs, who may start none',
    async () => {
      const page = await open('/ordering/proof', 'auditor');
      await page.getByRole('table', { name: 'In sum' }).waitFor();
      expect(await page.getByRole('button', { name: 'Replay the history' }).count()).toBe(0);
    },
    PATIENCE,
  );
});

describe('in German', () => {
  it(
    'has its words too',
    async () => {
      const page = await browser.open({ locale: 'de-DE' });
      await page.goto(`${web.url}/sign-in`);
      await page.getByLabel('Anmeldename').fill('view.manager');
      await page.getByLabel('Passwort', { exact: true }).fill('a long pass phrase');
      await page.getByRole('button', { name: 'Anmelden' }).click();
      await page.waitForURL((url) => !['/sign-in', '/'].includes(url.pathname));
      await page.goto(`${web.url}/ordering/suppliers`);
      await page.getByRole('heading', { name: 'Wie lange sie brauchen' }).waitFor();
      await page.goto(`${web.url}/ordering/proof`);
      await page.getByText(/^Etwas fehlte .*Artikel-Tagen\./).waitFor();
      await page.goto(`${web.url}/ordering/what-if`);
      await page.getByRole('heading', { name: 'Ein Großangebot' }).waitFor();
    },
    PATIENCE,
  );
});
