import { afterAll, afterEach, beforeAll, describe, expect, it } from '@jest/globals';
import type { Page } from 'playwright-core';
import { TestBook } from '../book/book.js';
import {
  eventually,
  expectAccessible,
  expectAccessibleLooks,
  openBrowser,
  shot,
  startWebService,
  type TestBrowser,
  type WebService,
} from './harness/index.js';
import { openAs } from './setup-steps.js';

let browser: TestBrowser;
let web: WebService;
let book: TestBook;

beforeAll(async () => {
  [browser, web] = await Promise.all([openBrowser(), startWebService()]);
  book = await TestBook.open(web.service, 'mill');
  await book.done('POST', '/suppliers', { name: 'Fernmoor', email: 'old@fernmoor.example' });
});

afterEach(() => browser.closePages());

afterAll(async () => {
  await browser.close();
  await web.stop();
});

const open = (role: string, path: string, options = {}) =>
  openAs({ browser, web }, role, path, options);

async function give(page: Page, name: string, content: string): Promise<void> {
  const mimeType = 'text/csv';
  await page
    .locator('input[type=file]')
    .setInputFiles({ name, mimeType, buffer: Buffer.from(content) });
}

/** The rows of the table of fates, once they are those of the latest answer. */
async function fates(page: Page): Promise<string[]> {
  const table = page.getByRole('table', { name: 'Rows' });
  await page.locator('table[aria-label="Rows"][aria-busy=false]').waitFor();
  const rows = await table.locator('tbody tr').allInnerTexts();
  return rows.map((row) => row.replace(/\s+/g, ' ').trim());
}

describe('bringing a list in', () => {
  it('shows what becomes of each row, asks what a column is, and then does it', async () => {
    const page = await open('manager', '/setup/files', { refusals: [422] });
    await page.getByText('Nothing was brought in yet.').waitFor();
    await page.getByLabel('What the file lists').selectOption('suppliers');
    await page.waitForURL(/kind=suppliers/);
    await page.getByRole('link', { name: 'Empty list, Suppliers and their terms, XLSX' }).waitFor();
    const list =
      'Firm;Shop;Where to\nx;Fernmoor;new@fernmoor.example\ny;Nordlicht;\nz;;a@b.example\n';
    await give(page, 'suppliers.csv', list);
    await page.getByText('has no column "Supplier" ("Lieferant")').waitFor();
    await expectAccessible(page);
    await shot(page, 'files-columns');
    await page.getByLabel('Column B is read as').selectOption('name');
    await page.getByLabel('Column C is read as').selectOption('email');
    await page.getByLabel('Column A is read as').selectOption('-');
    await page.getByRole('button', { name: 'Errors 1' }).waitFor();
    await eventually(
      () => fates(page),
      [
        '4 error Sheet "suppliers", row 4, column B (Supplier): this cell is blank; every row needs a name.',
      ],
    );
    await page.getByText('nothing comes in while anything is wrong').waitFor();
    await page.getByRole('button', { name: 'All 3' }).click();
    await eventually(async () => (await fates(page)).length, 3);
    expect((await fates(page)).slice(0, 2)).toEqual([
      '2 Fernmoor changed E-mail: old@fernmoor.example → new@fernmoor.example',
      '3 Nordlicht new',
    ]);
    await expectAccessibleLooks(page, 'files-checked');

    await give(page, 'mended.csv', 'Supplier;E-mail\nFernmoor;new@fernmoor.example\nNordlicht;\n');
    await page.getByRole('button', { name: 'Bring 2 rows in' }).click();
    await page.getByText('Brought in: 1 new, 1 changed, 0 the same.').first().waitFor();
    await page.getByRole('row', { name: /mended\.csv/ }).waitFor();
    const { items } = await book.done<{ items: { name: string }[] }>('GET', '/suppliers');
    expect(items.map((each) => each.name)).toEqual(['Fernmoor', 'Nordlicht']);

    await give(page, 'again.csv', 'Supplier;E-mail\nFernmoor;new@fernmoor.example\nNordlicht;\n');
    await page.getByText('Everything in it is in the book already.').waitFor();
    await give(page, 'empty.csv', '');
    await page.getByText('The file is empty.').waitFor();
  });

  it('takes a file that is dropped, in German, on a telephone', async () => {
    const page = await open('owner', '/setup/files?kind=locations', { width: 390, height: 844 });
    await page.evaluate(() => localStorage.setItem('traybook.language', 'de'));
    await page.reload();
    await page.getByRole('heading', { name: 'Dateien' }).waitFor();
    await page.getByRole('button', { name: 'Datei wählen' }).waitFor();
    const drop = async (name: string, content: string) => {
      const dropped = await page.evaluateHandle(
        ([called, text]) => {
          const data = new DataTransfer();
          data.items.add(new File([text ?? ''], called ?? '', { type: 'text/csv' }));
          return data;
        },
        [name, content],
      );
      const input = page.locator('input[type=file]').locator('..');
      await input.dispatchEvent('drop', { dataTransfer: dropped });
    };
    await drop('falsch.csv', 'Ort;Art\nLager;Truhe\n');
    await page
      .getByText('Blatt „falsch“, Zeile 2, Spalte B (Art): Diese Zelle muss eines davon sein')
      .waitFor();
    await drop('namenlos.csv', 'Art\nLager\n');
    await page.getByText('Blatt „namenlos“ hat keine Spalte „Lagerort“.').waitFor();
    await drop('orte.csv', 'Ort;Art\nLager;Lager\n');
    await page.getByRole('button', { name: '1 Zeile übernehmen' }).waitFor();
    await expectAccessible(page);
    await shot(page, 'files-telephone');
    await page.getByText('Spalten', { exact: true }).click();
    const width = await page.evaluate(() => document.documentElement.scrollWidth);
    expect(width).toBeLessThanOrEqual(390);
    await page.getByRole('button', { name: '1 Zeile übernehmen' }).click();
    await page.getByText('Übernommen: 1 neu, 0 geändert, 0 gleich.').first().waitFor();
  });
});

describe('taking the book out', () => {
  it('is a link to each file, for those who may', async () => {
    const page = await open('manager', '/setup/files');
    const link = page.getByRole('link', { name: 'Suppliers and their terms as CSV', exact: true });
    const [download] = await Promise.all([page.waitForEvent('download'), link.click()]);
    expect(download.suggestedFilename()).toBe('traybook-suppliers.csv');
    const assistant = await open('assistant', '/shelves');
    await assistant.locator('#content h1').waitFor();
    await assistant.goto(`${web.url}/setup/files`);
    await assistant.getByText('Files').first().waitFor({ state: 'detached' });
  });
});
