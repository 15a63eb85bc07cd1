import { afterAll, afterEach, beforeAll, describe, expect, it } from '@jest/globals';
import { deliveryLine, openSmallBook, type SmallBook } from '../book/book.js';
import {
  eventually,
  expectAccessible,
  FixedClock,
  openBrowser,
  shot,
  signIn,
  startWebService,
  type TestBrowser,
  TODAY,
  type WebService,
} from './harness/index.js';

let browser: TestBrowser;
let web: WebService;
let book: SmallBook;

beforeAll(async () => {
  [browser, web] = await Promise.all([
    openBrowser(),
    startWebService({ clock: new FixedClock(TODAY) }),
  ]);
  book = await openSmallBook(web.service, 'mill');
  await book.book.deliver(book.supplier, '2026-02-02', [
    deliveryLine(book.paste, book.room, 2, '72', { lotNumber: 'P-7', expiresOn: '2027-06-30' }),
  ]);
});

afterEach(() => browser.closePages());

afterAll(async () => {
  await browser.close();
  await web.stop();
});

interface Found {
  readonly items: readonly { readonly id: string }[];
}

describe('labels of the practice', () => {
  it('are chosen, put where the sheet begins, and opened as a PDF', async () => {
    const page = await browser.open();
    await signIn(page, web.url, 'mill.assistant');
    const { items } = await book.book.done<Found>('GET', `/stock?consumableId=${book.paste.id}`);
    await page.goto(`${web.url}/shelves?holdingId=${items[0]?.id ?? ''}`);
    await page.getByRole('link', { name: 'Print a label' }).click();
    await page.waitForURL('**/shelves/labels?holdingId=*');
    await page.getByText('Paste, Body 2, lot P-7').waitFor();
    await page.getByLabel('Store').check();
    await page.getByLabel('Label 5').check();
    await page.waitForURL('**start=5');
    await page.getByText('2 labels', { exact: true }).waitFor();
    await page.getByLabel('Of each').fill('x');
    await page.getByRole('button', { name: 'Make the sheet' }).click();
    await page.getByText('A number from 1 to 50').waitFor();
    await page.getByLabel('Of each').fill('2');
    await page.getByText('4 labels', { exact: true }).waitFor();
    await shot(page, 'labels');
    await expectAccessible(page);
    const sent = page.waitForRequest('**/api/labels/sheet.pdf*');
    const answered = page.waitForResponse('**/api/labels/sheet.pdf*');
    await page.getByRole('button', { name: 'Make the sheet' }).click();
    expect((await sent).postDataJSON()).toEqual({
      ...{ locationIds: [book.store], holdingIds: [items[0]?.id], start: 5, copies: 2 },
    });
    const answer = await answered;
    expect([answer.status(), answer.headers()['content-type']]).toEqual([200, 'application/pdf']);
  });

  it('need something to be printed for; in German, dark and narrow', async () => {
    const page = await browser.open({ width: 820, height: 1180, colorScheme: 'dark' });
    await signIn(page, web.url, 'mill.owner', '/shelves/labels');
    await page.getByRole('button', { name: 'Make the sheet' }).click();
    await page.getByText('Choose at least one label.').waitFor();
    await page.getByRole('button', { name: /Account|mill.owner/ }).click();
    await page.getByLabel('Language', { exact: true }).selectOption('Deutsch');
    await page.keyboard.press('Escape');
    await page.getByRole('heading', { name: 'Etiketten' }).waitFor();
    await page.getByLabel('Alle Orte').check();
    await eventually(() => page.getByText('3 Etiketten').count(), 1);
    await shot(page, 'labels-de');
    await expectAccessible(page);
  });
});
