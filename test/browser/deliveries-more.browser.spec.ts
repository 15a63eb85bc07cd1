import { afterAll, afterEach, beforeAll, describe, expect, it } from '@jest/globals';
import type { Page } from 'playwright-core';
import { deliveryLine, openSmallBook, postVisit, type SmallBook } from '../book/book.js';
import {
  eventually,
  expectAccessible,
  FixedClock,
  filled,
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
let orderId: string;

beforeAll(async () => {
  [browser, web] = await Promise.all([
    openBrowser(),
    startWebService({ clock: new FixedClock(TODAY) }),
  ]);
  book = await openSmallBook(web.service, 'mill');
  const lot = { lotNumber: 'P-8', expiresOn: '2027-06-30' };
  await book.book.deliver(book.supplier, '2026-02-02', [
    deliveryLine(book.paste, book.store, 1, '72', lot),
    deliveryLine(book.capsule, book.store, 1, '110', { lotNumber: 'K-1' }),
    deliveryLine(book.bib, book.store, 1, '5'),
  ]);
  orderId = await sentOrder();
  await postVisit(book, { usage: [{ consumableId: book.paste.id, dispensed: '0.94' }] });
});

afterEach(() => browser.closePages());

afterAll(async () => {
  await browser.close();
  await web.stop();
});

async function open(path: string, options = {}): Promise<Page> {
  const page = await browser.open(options);
  await signIn(page, web.url, 'mill.manager', path);
  await page.locator('#content h1').waitFor();
  return page;
}

const line = (page: Page, n: number) => page.getByRole('group', { name: `Line ${n}`, exact: true });

/** Every width and light that people work in. */
async function looks(page: Page, name: string): Promise<void> {
  for (const [width, colorScheme] of [
    [1280, 'light'],
    [390, 'dark'],
  ] as const) {
    await page.emulateMedia({ colorScheme });
    await page.locator(`html[data-mantine-color-scheme=${colorScheme}]`).waitFor();
    await page.setViewportSize({ width, height: 1180 });
    await expectAccessible(page);
    await shot(page, `${name}-${width}-${colorScheme}`);
  }
  await page.emulateMedia({ colorScheme: 'light' });
  await page.setViewportSize({ width: 1440, height: 900 });
}

/** An order that the supplier has: 5 packs of paste and 2 of smaller boxes of capsules. */
async function sentOrder(): Promise<string> {
  const smaller = await book.book.presentation(book.capsule.id, 'single-dose', 15, '0.25', {
    name: 'Smaller box',
  });
  const order = await book.book.done<{ id: string; version: number }>('POST', '/orders', {
    supplierId: book.supplier,
    lines: [
      { presentationId: book.paste.presentation, packs: 5, packPrice: '72' },
      { presentationId: smaller, packs: 2, packPrice: '92.40' },
    ],
  });
  const step = (what: string, body: object) =>
    book.book.done<{ version: number }>('POST', `/orders/${order.id}/${what}`, body);
  const { version } = await step('approval', { version: order.version });
  await step('sending', { version, way: 'by hand' });
  return order.id;
}

describe('a delivery against an order', () => {
  it('offers what is still to come; lots, faults and a smaller pack are said before it is booked', async () => {
    const page = await open(`/shelves/deliveries/new?orderId=${orderId}`);
    await page.getByText('Against order 1').waitFor();
    await line(page, 1).getByText('5 still to come').waitFor();
    await page.getByRole('button', { name: 'All of it came' }).click();
    await eventually(() => line(page, 1).getByLabel('Packs').inputValue(), '5');
    await page.getByRole('button', { name: 'More about line 1' }).click();
    await line(page, 1).getByLabel('Arrived damaged').fill('1');
    await line(page, 1).getByLabel('Its lot').fill('P-9');
    await line(page, 1).getByLabel('Packs').fill('4');
    await line(page, 1).getByRole('button', { name: 'Several lots' }).click();
    const lots = line(page, 1).getByRole('group', { name: 'Lots of this line' });
    const fill = async (n: number, packs: string, lot: string, expires: string) => {
      await lots.getByLabel('Of them').nth(n).fill(packs);
      await lots.getByLabel('Lot', { exact: true }).nth(n).fill(lot);
      await lots.getByLabel('Expiry').nth(n).fill(expires);
    };
    await fill(0, '3', 'P-10', '2027-12-31');
    await fill(1, '2', 'P-11', '2028-01-31');
    await line(page, 2).getByLabel('Lot number').fill('K-2');
    await line(page, 2).getByLabel('Expiry on the label').fill('2028-01-31');
    await page.getByRole('button', { name: 'Book the delivery' }).click();
    await lots.getByText('The lots come to 5, the line says 4').waitFor();
    await fill(1, '1', 'P-11', '2028-01-31');
    await line(page, 2)
      .getByText('A pack was 5\u00a0g, now 3.75\u00a0g: per g 12% dearer')
      .waitFor();
    await page.getByRole('textbox', { name: 'Duty' }).fill('4,00');
    await line(page, 1).getByText('P-10: landed €217.83').waitFor();
    await looks(page, 'receive-order');
    await page.getByRole('button', { name: 'Book the delivery' }).click();
    await page.getByRole('heading', { level: 1, name: 'Delivery of 4 May 2026' }).waitFor();
    const rows = page.getByRole('table', { name: 'Lines' }).locator('tbody tr');
    await eventually(() => rows.count(), 3);
    const faults = page.getByRole('table', { name: 'Damaged or missing' });
    expect(await faults.locator('tbody tr').allTextContents()).toEqual([
      'Paste, Body 2PackDamaged1P-9',
    ]);
    await looks(page, 'delivery-faults');
    await page.goto(`${web.url}/shelves/deliveries/new?orderId=${orderId}`);
    await line(page, 1).getByText('1 still to come').waitFor();
  });

  it('takes weights, samples and the lots of a kit; in German, too', async () => {
    const page = await open(`/setup/consumables/${book.adhesive.id}`);
    await page.getByRole('button', { name: 'Parts of Pack' }).click();
    const dialog = page.getByRole('dialog', { name: 'What else is in Pack' });
    await dialog.getByRole('button', { name: 'Add a part' }).click();
    const part = dialog.getByRole('group', { name: 'Part 1' });
    await part.getByLabel('Content of each, in its unit').fill('0.5');
    await dialog.getByRole('button', { name: 'Save' }).click();
    await part.getByText('Choose what it is, and fill in its numbers').waitFor();
    await part.getByRole('combobox', { name: 'Consumable' }).fill('etchant');
    await page.getByRole('option', { name: 'Etchant gel' }).click();
    await part.getByLabel('Share of the price').fill('25');
    await looks(page, 'kit-parts');
    await dialog.getByRole('button', { name: 'Save' }).click();
    await dialog.waitFor({ state: 'hidden' });
    await page.evaluate(() => localStorage.setItem('traybook.language', 'de'));
    await page.goto(`${web.url}/shelves/deliveries/new?consumableId=${book.adhesive.id}`);
    const zeile = page.getByRole('group', { name: 'Zeile 1', exact: true });
    const kit = zeile.getByRole('group', { name: 'In diesem Set' });
    await kit.getByText('25 % des Preises').waitFor();
    await zeile.getByLabel('Packungen', { exact: true }).fill('2');
    await zeile.getByLabel('Preis je Packung').fill('100');
    await zeile.getByLabel('Chargennummer').fill('SET-1');
    await kit.getByLabel('Etchant gel: Charge').fill('E-3');
    await page.getByLabel('Fracht verteilen nach').selectOption({ label: 'Gewicht der Zeilen' });
    await page.getByRole('button', { name: 'Lieferung buchen' }).click();
    await zeile.getByText('Das Gewicht in Gramm schreiben').waitFor();
    await zeile.getByLabel('Gewicht').fill('250');
    await looks(page, 'receive-kit');
    await page.getByRole('button', { name: 'Lieferung buchen' }).click();
    await page.getByRole('heading', { level: 1, name: /Lieferung vom/ }).waitFor();
    const rows = page.locator('table').first().locator('tbody tr');
    await eventually(() => rows.count(), 2);
    expect(await rows.nth(1).textContent()).toMatch(/Etchant gel.*In Set-Charge SET-1.*E-3/);
  });

  it('is traced by the number of the kit, and held with every part', async () => {
    const page = await open('/trace?q=SET-1');
    await page.getByRole('row', { name: /E-3/ }).getByRole('link').click();
    await page.getByRole('heading', { name: 'It came in kit lot SET-1' }).waitFor();
    const parts = page.getByRole('table', { name: 'Lots of the parts of the kit' });
    await eventually(() => parts.locator('tbody tr').count(), 2);
    await looks(page, 'trace-kit');
    await page.getByRole('button', { name: 'Hold or release' }).click();
    const dialog = page.getByRole('dialog');
    await dialog
      .getByLabel('What is meant')
      .selectOption({ label: 'The whole kit SET-1, with every part' });
    await dialog.getByLabel('From now on it is').selectOption('recalled');
    await dialog.getByLabel('Why').fill('Notice of the maker of 4 May.');
    await dialog.getByRole('button', { name: 'Write it down' }).click();
    await dialog.waitFor({ state: 'hidden' });
    await eventually(() => parts.getByText('recalled').count(), 2);
  });
});

describe('a delivery that was booked wrongly', () => {
  it('is put right line by line, and by the invoice; what was used keeps lot and cost', async () => {
    const { items } = await book.book.done<{ items: { id: string; receivedOn: string }[] }>(
      'GET',
      '/deliveries',
    );
    const id = items.find((one) => one.receivedOn === '2026-02-02')?.id;
    const page = await open(`/shelves/deliveries/${id}`);
    const correct = page.getByRole('button', { name: 'Correct line 1: Paste, Body 2' });
    await correct.press('Enter');
    const dialog = page.getByRole('dialog', { name: 'Line 1 as it should have been' });
    await dialog.waitFor();
    // Left by the keyboard, it leads back to where one was.
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'hidden' });
    await eventually(() => correct.evaluate((at) => at === document.activeElement), true);
    await correct.press('Enter');
    await dialog.getByText('1\u00a0g of it left already.').waitFor();
    await dialog.getByLabel('Lot number').fill('P-B');
    await dialog.getByRole('button', { name: 'Correct', exact: true }).click();
    await dialog.getByText('Please fill this in').waitFor();
    await looks(page, 'correct-line');
    await dialog.getByLabel('What was wrong').fill('The 8 was a B.');
    await dialog.getByRole('button', { name: 'Correct', exact: true }).click();
    await page.getByText('Corrected: it stands on line 4 now.').waitFor();
    const rows = page.getByRole('table', { name: 'Lines' }).locator('tbody tr');
    await eventually(() => rows.count(), 4);
    expect(await rows.nth(3).textContent()).toMatch(/Line 1, corrected: “The 8 was a B.”P-B/);
    await page.getByRole('link', { name: 'Enter the invoice' }).click();
    const invoice = page.getByRole('dialog', { name: 'What the invoice says' });
    await filled(invoice.getByLabel('Paste, Body 2, a pack'));
    await invoice.getByLabel('Paste, Body 2, a pack').fill('80');
    await invoice.getByLabel('Invoice number').fill('INV-7');
    await looks(page, 'invoice');
    await invoice.getByRole('button', { name: 'Book it' }).click();
    await page.getByText('Booked: stock €6.00, price variance €2.00.').waitFor();
    const invoices = page.getByRole('table', { name: 'Invoices that came later' });
    await eventually(
      () =>
        invoices
          .locator('tbody tr')
          .first()
          .textContent()
          .then((text) => /INV-7.*€187\.00€195\.00€2\.00/.test(text ?? '')),
      true,
    );
    await looks(page, 'delivery-invoiced');
    await page.goto(`${web.url}/costs/variances`);
    const later = page.getByRole('table', { name: 'Invoices that came later' });
    await later.getByText('+€2.00').waitFor();
    await expectAccessible(page);
  });
});
