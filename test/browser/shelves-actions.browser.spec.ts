import { afterAll, afterEach, beforeAll, describe, expect, it } from '@jest/globals';
import type { Locator, Page } from 'playwright-core';
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

let browser: TestBrowser;
let web: WebService;
let book: SmallBook;

beforeAll(async () => {
  [browser, web] = await Promise.all([
    openBrowser(),
    startWebService({ clock: new FixedClock(TODAY) }),
  ]);
  book = await openSmallBook(web.service, 'mill');
  const { etchant, adhesive, paste, capsule, strip, store, room, supplier } = book;
  await book.book.deliver(supplier, '2026-02-02', [
    deliveryLine(etchant, store, 3, '20', { lotNumber: 'E-1', expiresOn: '2026-04-30' }),
    deliveryLine(adhesive, store, 2, '110', { lotNumber: 'A-1', expiresOn: '2027-01-31' }),
    deliveryLine(paste, room, 2, '72', { lotNumber: 'P-7', expiresOn: '2027-06-30' }),
    deliveryLine(capsule, room, 1, '110', { lotNumber: 'K-1', expiresOn: '2027-05-05' }),
    deliveryLine(strip, room, 1, '9', {}),
  ]);
});

afterEach(() => browser.closePages());

afterAll(async () => {
  await browser.close();
  await web.stop();
});

interface Found {
  readonly items: readonly Readonly<Record<string, string>>[];
}

async function holdingOf(of: Item): Promise<string> {
  const { items } = await book.book.done<Found>('GET', `/stock?consumableId=${of.id}`);
  return items[0]?.id ?? '';
}

const onHand = async (of: Item) => {
  const { items } = await book.book.done<Found>('GET', `/stock?consumableId=${of.id}`);
  return items.map((one) => one.onHand);
};

const movementsOf = async (of: Item) =>
  (await book.book.done<Found>('GET', `/movements?consumableId=${of.id}`)).items;

interface Opened {
  readonly page: Page;
  readonly sheet: Locator;
}

async function act(name: string, of: Item, action: string, options = {}): Promise<Opened> {
  const page = await browser.open(options);
  await signIn(
    page,
    web.url,
    `mill.${name}`,
    `/shelves?holdingId=${await holdingOf(of)}&do=${action}`,
  );
  const sheet = page.getByRole('dialog');
  await sheet.locator('form').waitFor();
  return { page, sheet };
}

const focused = (page: Page) => page.evaluate(() => document.activeElement?.textContent);

const errors = (sheet: Locator) => sheet.locator('.mantine-InputWrapper-error').allTextContents();

describe('what is done with a holding', () => {
  it('writes off with the reason that its state suggests, and undoes it with a note', async () => {
    const { page, sheet } = await act('assistant', book.etchant, 'write-off');
    expect(await sheet.getByLabel('Why').inputValue()).toBe('expired');
    expect(await sheet.getByLabel('Why').locator('option').count()).toBe(10);
    await sheet.getByLabel('How much').fill('99');
    await sheet.getByRole('button', { name: 'Write off' }).click();
    await eventually(() => errors(sheet), ['Must be at most 14.4\u00a0mL']);
    await sheet.getByLabel('How much').fill('');
    await sheet.getByLabel('Why').selectOption('');
    await sheet.getByLabel('On', { exact: true }).fill('2026-05-05');
    await sheet.getByRole('button', { name: 'Write off' }).click();
    await eventually(
      () => errors(sheet),
      ['Please fill this in', 'Please choose', 'Must not be in the future'],
    );
    expect(await movementsOf(book.etchant)).toHaveLength(1);
    await expectAccessible(page);
    await sheet.getByLabel('How much').fill('4,8');
    await sheet.getByLabel('Why').selectOption('expired');
    await sheet.getByLabel('On', { exact: true }).fill('2026-05-03');
    await sheet.getByRole('button', { name: 'Write off' }).click();
    await sheet.waitFor({ state: 'hidden' });
    expect(await onHand(book.etchant)).toEqual(['9.6']);
    await page.getByText('Wrote off 4.8\u00a0mL of Etchant gel.').waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    const ask = page.getByRole('dialog', { name: 'Reverse this?' });
    await ask.getByText('Written off: 4.8\u00a0mL of Etchant gel (lot E-1)').waitFor();
    await ask.getByRole('button', { name: 'Reverse' }).click();
    await eventually(() => errors(ask), ['Please fill this in']);
    await ask.getByLabel('Why').fill('The other bottle was meant.');
    await ask.getByRole('button', { name: 'Reverse' }).click();
    await page.getByText('Reversed by a counter-entry.').waitFor();
    expect(await onHand(book.etchant)).toEqual(['14.4']);
  });

  it('opens one container, whose own life then runs', async () => {
    const { page, sheet } = await act('assistant', book.adhesive, 'open');
    await sheet.getByLabel('Opened on').fill('2026-01-01');
    await sheet.getByRole('button', { name: 'Open one' }).click();
    await eventually(() => errors(sheet), ['Must not be before 2 Feb 2026']);
    await sheet.getByLabel('Opened on').fill('2026-05-01');
    await sheet.getByRole('button', { name: 'Open one' }).click();
    await page.getByText('Opened: Adhesive in Store.').waitFor();
    const lots = page.getByRole('table', { name: 'Lots and containers of this consumable' });
    await lots.getByText('opened 1 May 2026').waitFor();
    await lots.getByText('label 31 Jan 2027').waitFor();
    await lots.getByText('1 Nov 2026').waitFor();
  });

  it('moves by keyboard alone; what is wrong stands beside the field', async () => {
    const { page, sheet } = await act('assistant', book.paste, 'move');
    expect(await page.evaluate(() => document.activeElement?.getAttribute('name'))).toBe(
      'quantity',
    );
    await page.keyboard.type('9');
    await page.keyboard.press('Enter');
    await eventually(() => errors(sheet), ['Must be at most 8\u00a0g', 'Please choose']);
    await page.keyboard.press('Control+A');
    await page.keyboard.type('4');
    await eventually(() => errors(sheet), ['Please choose']);
    expect(await page.evaluate(() => document.activeElement?.getAttribute('name'))).toBe(
      'quantity',
    );
    await page.keyboard.press('Tab');
    await page.keyboard.press('Tab');
    await page.keyboard.press('ArrowDown');
    for (let stops = 0; stops < 6 && (await focused(page)) !== 'Move'; stops += 1) {
      await page.keyboard.press('Tab');
    }
    await page.keyboard.press('Enter');
    await page.getByText('Moved 4\u00a0g of Paste, Body 2 to Room 2.').waitFor();
    expect((await onHand(book.paste)).sort()).toEqual(['4', '4']);
  });

  it('shows beside the field what only the service knows', async () => {
    const { page, sheet } = await act('assistant', book.capsule, 'move', { refusals: [422] });
    await sheet.getByLabel('How much').fill('0.3');
    await sheet.getByLabel('To').selectOption('Store');
    await sheet.getByRole('button', { name: 'Move' }).click();
    await eventually(() => errors(sheet), ['Must be whole doses or pieces']);
    expect(await movementsOf(book.capsule)).toHaveLength(1);
    await shot(page, 'shelves-move-refused');
  });

  it('sends back with a note', async () => {
    const { page, sheet } = await act('manager', book.strip, 'return');
    await sheet.getByLabel('How much').fill('1.5');
    await sheet.getByRole('button', { name: 'Send back' }).click();
    await eventually(
      () => errors(sheet),
      ['Must be a whole number: this is counted in pieces', 'Please fill this in'],
    );
    await sheet.getByRole('button', { name: 'All of it' }).click();
    await sheet.getByLabel('Note').fill('Wrong width.');
    await sheet.getByRole('button', { name: 'Send back' }).click();
    await page.getByText('Sent back 100\u00a0pieces of Clear matrix strip.').waitFor();
    await page.getByText('Nothing of it is on the shelves').waitFor();
  });

  it('counts one holding, the difference shown before it is booked', async () => {
    const { page, sheet } = await act('assistant', book.capsule, 'count');
    await sheet.getByRole('button', { name: 'Book the count' }).click();
    await eventually(() => errors(sheet), ['Please fill this in']);
    await sheet.getByLabel('Really there').fill('4.75');
    await sheet.getByText('−\u20090.25\u00a0g').waitFor();
    await sheet.getByRole('button', { name: 'Book the count' }).click();
    await page.getByText('Counted Paste in capsules, Enamel light.').waitFor();
    expect(await onHand(book.capsule)).toEqual(['4.75']);
  });

  it('holds a lot everywhere, and releases it again', async () => {
    const { page, sheet } = await act('dentist', book.capsule, 'hold');
    await sheet.getByRole('button', { name: 'Set for every location' }).click();
    await eventually(() => errors(sheet), ['Please choose', 'Please fill this in']);
    await sheet.getByLabel('The lot is now').selectOption('quarantined');
    await sheet.getByLabel('Why').fill('The seal looks broken.');
    await sheet.getByRole('button', { name: 'Set for every location' }).click();
    await page.getByText('Lot K-1: Quarantined.').waitFor();
    await page.getByRole('table').getByText('Quarantined').waitFor();
    await page.getByRole('link', { name: 'Hold or release the lot: lot K-1' }).click();
    await sheet.getByLabel('The lot is now').selectOption('released');
    await sheet.getByLabel('Why').fill('It was only the box.');
    await sheet.getByRole('button', { name: 'Set for every location' }).click();
    await page.getByText('Lot K-1: Released.').waitFor();
  });
});

describe('the ledger', () => {
  it('tells each entry in words and reverses what can be reversed', async () => {
    const page = await browser.open();
    await signIn(
      page,
      web.url,
      'mill.assistant',
      `/shelves/movements?consumableId=${book.paste.id}`,
    );
    const rows = page.getByRole('table', { name: 'Movements' }).locator('tbody tr');
    await rows.first().waitFor();
    expect(await rows.first().textContent()).toMatch(/Moved.*lot P-7Room 1 to .* Room 24\u00a0g–/);
    expect(await rows.last().textContent()).toMatch(/Received.*Northgate Supply.*Room 1.*144\.00/);
    await page.getByRole('link', { name: /^Reverse: Moved, 4.g of Paste/ }).click();
    await page.waitForURL(/undo=/);
    await page.reload();
    const ask = page.getByRole('dialog', { name: 'Reverse this?' });
    await ask.getByLabel('Why').fill('Wrong room.');
    await ask.getByRole('button', { name: 'Reverse' }).click();
    await page.getByText('Reversal').waitFor();
    await page.getByText('“Wrong room.”').waitFor();
    expect(await page.getByRole('link', { name: /^Reverse:/ }).count()).toBe(0);
    await page.getByLabel('From or to').selectOption('supplier');
    await page.waitForURL(/account=supplier/);
    await eventually(() => rows.count(), 1);
    await page.getByRole('link', { name: /^Only Paste, Body 2/ }).click();
    await eventually(() => rows.count(), 5);
  });

  it('says why a reversal is refused', async () => {
    const page = await browser.open({ refusals: [409] });
    const { items } = await book.book.done<Found>('GET', '/movements?account=return');
    const id = items[0]?.id ?? '';
    await signIn(page, web.url, 'mill.owner', `/shelves/movements?undo=${id}`);
    const ask = page.getByRole('dialog', { name: 'Reverse this?' });
    await ask.getByLabel('Why').fill('They kept it.');
    await book.book.done('POST', `/movements/${id}/reversal`, { note: 'Somebody was faster.' });
    await ask.getByRole('button', { name: 'Reverse' }).click();
    await ask.getByRole('alert').getByText('This movement was reversed before.').waitFor();
  });
});
