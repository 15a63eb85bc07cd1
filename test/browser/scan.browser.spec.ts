import { afterAll, afterEach, beforeAll, describe, expect, it } from '@jest/globals';
import type { Page } from 'playwright-core';
import { deliveryLine, type Item, openSmallBook, type SmallBook } from '../book/book.js';
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
import { wedge } from './scan-steps.js';

const GS = '\u001d';
/** GTINs of the prefix that GS1 keeps for examples. */
const PASTE = '09521234543213';
const NEW = '09521987654327';

let browser: TestBrowser;
let web: WebService;
let book: SmallBook;

beforeAll(async () => {
  [browser, web] = await Promise.all([
    openBrowser(),
    startWebService({ clock: new FixedClock(TODAY) }),
  ]);
  book = await openSmallBook(web.service, 'mill');
  const { adhesive, paste, store, room, supplier } = book;
  await book.book.deliver(supplier, '2026-02-02', [
    deliveryLine(paste, room, 2, '72', { lotNumber: 'P-7', expiresOn: '2027-06-30' }),
    deliveryLine(adhesive, store, 1, '110', { lotNumber: 'XY1', expiresOn: '2027-01-31' }),
    deliveryLine(adhesive, store, 1, '110', { lotNumber: 'XZ1', expiresOn: '2027-01-31' }),
  ]);
  const code = { deviceIdentifier: PASTE };
  await book.book.done('PATCH', `/presentations/${paste.presentation}`, code);
});

afterEach(() => browser.closePages());

afterAll(async () => {
  await browser.close();
  await web.stop();
});

async function at(person: string, path: string, options = {}): Promise<Page> {
  const page = await browser.open(options);
  await signIn(page, web.url, `mill.${person}`, path);
  await page.locator('#content h1').waitFor();
  return page;
}

const valuesOf = (page: Page, label: string) =>
  page
    .getByLabel(label, { exact: true })
    .evaluateAll((fields) => fields.map((field) => (field as HTMLInputElement).value));

interface Found {
  readonly items: readonly Readonly<Record<string, string>>[];
}

async function holdingOf(of: Item): Promise<string> {
  const { items } = await book.book.done<Found>('GET', `/stock?consumableId=${of.id}`);
  return items[0]?.id ?? '';
}

describe('a hand scanner', () => {
  it('writes the lines of a delivery, also from within a field, which keeps what was in it', async () => {
    const page = await at('manager', '/shelves/deliveries/new');
    await page.getByRole('button', { name: 'Scan with the camera' }).waitFor();
    await wedge(page, `]d201${PASTE}1727063010P-9${GS}21S1`);
    await page.getByText('a new line.').waitFor();
    expect(await valuesOf(page, 'Lot number')).toEqual(['P-9']);
    expect(await valuesOf(page, 'Packs')).toEqual(['1']);
    const note = page.getByLabel('Reference');
    await note.fill('DN-4');
    await wedge(page, `01${PASTE}1727063010P-9`);
    await page.getByText('2 packs now.').waitFor();
    expect(await note.inputValue()).toBe('DN-4');
    expect(await page.evaluate(() => document.activeElement?.tagName)).toBe('INPUT');
    await wedge(page, `(01)${PASTE}(17)270731(10)P-10`);
    await page.getByText('lot P-10').waitFor();
    await eventually(() => valuesOf(page, 'Packs'), ['2', '1']);
    expect(await valuesOf(page, 'Lot number')).toEqual(['P-9', 'P-10']);
    expect(
      await page
        .locator('input[type=date]')
        .evaluateAll((all) => all.map((field) => (field as HTMLInputElement).value)),
    ).toEqual([TODAY, '2027-06-30', '2027-07-31']);
    await shot(page, 'scan-receive');
    await expectAccessible(page);
  });

  it('says what is wrong with a label, and where', async () => {
    const page = await at('manager', '/shelves');
    await wedge(page, `01${PASTE.slice(0, 13)}4`);
    await page.getByText('This label cannot be read.').waitFor();
    await page.getByText('The check digit is 4, but the digits before it give 3.').waitFor();
    await page.getByText('Look at character 16:').waitFor();
    expect(await page.locator('mark').textContent()).toBe('4');
    await shot(page, 'scan-wrong');
    await expectAccessible(page);
  });

  it('asks once which product an unknown code is, and knows it from then on', async () => {
    const page = await at('manager', '/shelves');
    await wedge(page, `01${NEW}10A-1`);
    const dialog = page.getByRole('dialog', { name: 'Which product is this?' });
    await dialog.getByText(NEW).waitFor();
    await dialog.getByRole('button', { name: 'Remember' }).click();
    await eventually(
      () => dialog.locator('.mantine-InputWrapper-error').allTextContents(),
      ['Please choose'],
    );
    await dialog.getByLabel('Product and pack').click();
    await dialog.getByLabel('Product and pack').fill('Etch');
    await page.getByRole('option', { name: /Etch/ }).first().click();
    await shot(page, 'scan-which');
    await expectAccessible(page);
    await dialog.getByRole('button', { name: 'Remember' }).click();
    await page.waitForURL(`**/shelves?consumableId=${book.etchant.id}`);
    await page.getByText('Lot A-1 is not in the book yet.').waitFor();
    const { items } = await book.book.done<Found>('GET', `/presentations?deviceIdentifier=${NEW}`);
    expect(items.map(({ id }) => id)).toEqual([book.etchant.presentation]);
  });

  it('tells whoever may not change the catalogue whom to ask', async () => {
    const page = await at('assistant', '/shelves');
    await wedge(page, '(01)09521000000018(10)A-1');
    await page.getByText('The code 09521000000018 is on no product yet.').waitFor();
    await page.getByText('Somebody who looks after the catalogue').waitFor();
    expect(await page.getByRole('dialog').count()).toBe(0);
  });

  it('opens the holding, and the trace of a lot', async () => {
    const page = await at('owner', '/shelves');
    await wedge(page, `01${PASTE}1727063010P-7`);
    await page.waitForURL(`**/shelves?holdingId=${await holdingOf(book.paste)}`);
    await page.getByRole('dialog').getByText('P-7').waitFor();
    await page.goto(`${web.url}/trace`);
    await page.locator('input:focus').waitFor();
    await wedge(page, `01${PASTE}1727063010P-7`);
    await page.getByRole('heading', { name: 'Lot P-7' }).waitFor();
    await wedge(page, '(01)09521000000018(10)XY1');
    await page.getByRole('heading', { name: 'Lot XY1' }).waitFor();
  });

  it('set to a US keyboard at a German computer never takes one lot for another', async () => {
    const page = await at('owner', '/trace');
    await page.getByLabel('Language', { exact: true }).selectOption('Deutsch');
    await page.getByRole('button', { name: 'Mit der Kamera scannen' }).waitFor();
    await wedge(page, `01${NEW}10XY1`, 'de');
    const dialog = page.getByRole('dialog', { name: 'Welche Charge steht auf dem Etikett?' });
    await dialog.getByRole('button', { name: 'XZ1' }).waitFor();
    await dialog.getByRole('button', { name: 'XY1' }).click();
    await page.getByRole('heading', { name: 'Charge XY1' }).waitFor();
    await wedge(page, `01${NEW}10XZ1`, 'de');
    await page.getByRole('heading', { name: 'Charge XZ1' }).waitFor();
    expect(await page.getByRole('dialog').count()).toBe(0);
    await expectAccessible(page);
  });
});
