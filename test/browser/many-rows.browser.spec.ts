import { afterAll, afterEach, beforeAll, describe, expect, it } from '@jest/globals';
import type { Page } from 'playwright-core';
import { openSmallBook } from '../book/book.js';
import { asOwner } from '../harness/database.js';
import {
  openBrowser,
  signIn,
  startWebService,
  type TestBrowser,
  type WebService,
} from './harness/index.js';
import { fillWithRows } from './harness/many-rows.js';

const ROWS = 5000;

let web: WebService;
let browser: TestBrowser;
let page: Page;

beforeAll(async () => {
  web = await startWebService();
  const book = await openSmallBook(web.service, 'crowd');
  const owner = await asOwner(web.service.databaseUrl);
  await fillWithRows(owner, book, ROWS);
  await owner.end();
  browser = await openBrowser();
  page = await browser.open();
  await signIn(page, web.url, 'crowd.owner');
});

afterEach(() => expect(page.url()).toContain(web.url));

afterAll(async () => {
  await browser
    .closePages()
    .finally(() => browser.close())
    .finally(() => web.stop());
});

const LISTS: [screen: string, search: string, found: string][] = [
  ['/shelves', 'q=Paste+number+04711', 'Paste number 04711'],
  ['/shelves/movements', '', ''],
  ['/shelves/deliveries', 'q=DN-4711', 'DN-4711'],
  ['/visits', 'q=M-4711', 'M-4711'],
  ['/costs/restorations', '', ''],
  ['/setup/consumables', 'q=04711', 'Paste number 04711'],
];

describe(`a list of ${ROWS} rows`, () => {
  it.each(LISTS)(
    'at %s shows a page, goes to the next, and finds one',
    async (screen, search, found) => {
      await page.goto(`${web.url}${screen}`);
      const rows = page.locator('#content tbody tr');
      await rows.first().waitFor();
      const first = (await rows.first().textContent()) ?? '';
      const count = await rows.count();
      expect(count).toBeGreaterThan(9);
      expect(count).toBeLessThanOrEqual(200);
      await page.getByRole('button', { name: 'Next page' }).click();
      await page.waitForURL(/cursor=/);
      await rows.first().filter({ hasNotText: first }).waitFor();
      if (search === '') return;
      await page.goto(`${web.url}${screen}?${search}`);
      await rows.filter({ hasText: found }).first().waitFor();
      expect(await rows.count()).toBe(1);
    },
  );

  it('does not bury Today', async () => {
    await page.goto(`${web.url}/today`);
    await page.locator('#content h2').first().waitFor();
    expect(await page.locator('#content').getByRole('button').count()).toBeLessThan(300);
  });
});
