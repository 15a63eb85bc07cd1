import { afterAll, afterEach, beforeAll, describe, expect, it } from '@jest/globals';
import type { Page } from 'playwright-core';
import { deliveryLine, openSmallBook, type SmallBook } from '../book/book.js';
import {
  eventually,
  expectAccessible,
  expectAccessibleLooks,
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

beforeAll(async () => {
  [browser, web] = await Promise.all([
    openBrowser(),
    startWebService({ clock: new FixedClock(TODAY) }),
  ]);
  book = await openSmallBook(web.service, 'mill');
  const { paste, strip, store, supplier } = book;
  const lines = [
    deliveryLine(paste, store, 2, '72', { lotNumber: 'P-1', expiresOn: '2027-06-30' }),
    deliveryLine(strip, store, 1, '9', {}),
  ];
  const extras = { freight: '6.12', reference: 'DN-1' };
  await book.book.deliver(supplier, '2026-02-02', lines, extras);
});

afterEach(() => browser.closePages());

afterAll(async () => {
  await browser.close();
  await web.stop();
});

interface Listed {
  readonly items: readonly { readonly id: string; readonly reference: string | null }[];
}

const deliveries = async () => (await book.book.done<Listed>('GET', '/deliveries')).items;

async function open(name: string, path: string, options = {}): Promise<Page> {
  const page = await browser.open(options);
  await signIn(page, web.url, `mill.${name}`, path);
  await page.locator('#content h1').waitFor();
  return page;
}

const line = (page: Page, n: number) => page.getByRole('group', { name: `Line ${n}` });

const productOf = (page: Page, n: number) =>
  line(page, n).getByRole('combobox', { name: 'Product' });

/** Types into the product of a line and takes the first that is found. */
async function choose(page: Page, n: number, typed: string, product: string): Promise<void> {
  await productOf(page, n).fill(typed);
  await page.getByRole('option', { name: product }).waitFor();
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Enter');
}

const errors = (page: Page) => page.locator('.mantine-InputWrapper-error').allTextContents();

describe('booking a delivery', () => {
  it('is done by keyboard, line by line, with the last price and a running total', async () => {
    const page = await open('manager', '/shelves/deliveries/new');
    expect(await page.getByLabel('Received on').inputValue()).toBe(TODAY);
    await page.getByLabel('Reference').fill('DN-2');
    await choose(page, 1, 'body 2', 'Paste, Body 2');
    await line(page, 1).getByText('as on 2 Feb').waitFor();
    await line(page, 1).getByLabel('Packs').fill('3');
    await line(page, 1).getByText('Pack, makes 12\u00a0g').waitFor();
    await filled(line(page, 1).getByLabel('Price a pack'));
    await line(page, 1).getByLabel('Price a pack').fill('81');
    await line(page, 1).getByText('12.5% dearer').waitFor();
    await line(page, 1).getByLabel('Lot number').fill('P-2');
    await line(page, 1).getByLabel('Expiry on the label').fill('2026-05-31');
    await line(page, 1).getByText('Only 27 days left').waitFor();
    await line(page, 1).getByLabel('Lot number').press('Enter');
    await productOf(page, 2).waitFor();
    await eventually(
      () =>
        line(page, 2)
          .locator('input')
          .first()
          .evaluate((field) => field === document.activeElement),
      true,
    );
    await choose(page, 2, 'strip', 'Clear matrix strip');
    await line(page, 2).getByLabel('Packs').fill('2');
    await line(page, 2).getByLabel('Not on the label').check();
    await line(page, 2).getByLabel('Expiry on the label').fill('2026-05-03');
    await line(page, 2).getByText('Already expired when it came').waitFor();
    await line(page, 2).getByLabel('Expiry on the label').fill('');
    await page.getByRole('textbox', { name: 'Freight' }).fill('6,90');
    await page.getByText('€267.90').waitFor();
    await expectAccessible(page);
    await shot(page, 'receive-1440');
    await page.reload();
    expect(await line(page, 1).getByLabel('Lot number').inputValue()).toBe('P-2');
    await page.getByRole('button', { name: 'Book the delivery' }).click();
    await page.getByRole('heading', { level: 1, name: 'Delivery of 4 May 2026' }).waitFor();
    await page.getByText('Booked: 2 lines, €267.90 landed.').waitFor();
    const rows = page.getByRole('table', { name: 'Lines' }).locator('tbody tr');
    expect(await rows.first().textContent()).toMatch(
      /Paste, Body 2.*P-2until 31 May 2026Store3 × €81\.0012\u00a0g€249\.42.*20\.785 EUR\/g12\u00a0g/,
    );
    await page.goto(`${web.url}/shelves/deliveries/new`);
    expect(await productOf(page, 1).inputValue()).toBe('');
  });

  it('says what is wrong beside every field, and books nothing', async () => {
    const page = await open('manager', '/shelves/deliveries/new', { refusals: [409, 422] });
    const before = (await deliveries()).length;
    await page.getByLabel('Received on').fill('2026-05-05');
    await page.getByRole('textbox', { name: 'Freight' }).fill('-1');
    await page.getByLabel('Discount').fill('x');
    await page.getByRole('button', { name: 'Book the delivery' }).click();
    await eventually(
      () => errors(page),
      [
        'Must not be in the future',
        'Choose a product',
        'Must be a whole number, 1 or more',
        'Please fill this in',
        'Type the lot number, or say that the label states none',
        'Must not be less than nothing',
        'Please write a number, e.g. 0.06',
      ],
    );
    await expectAccessible(page);
    await page.getByLabel('Received on').fill(TODAY);
    await page.getByRole('textbox', { name: 'Freight' }).fill('');
    await choose(page, 1, 'body 2', 'Paste, Body 2');
    await line(page, 1).getByLabel('Packs').fill('1');
    await filled(line(page, 1).getByLabel('Price a pack'));
    await line(page, 1).getByLabel('Price a pack').fill('72');
    await line(page, 1).getByLabel('Lot number').fill('P-1');
    await line(page, 1).getByLabel('Expiry on the label').fill('2028-06-30');
    await page.getByLabel('Discount').fill('80');
    await page.getByRole('button', { name: 'Book the delivery' }).click();
    await eventually(() => errors(page), ['Must not be more than the goods cost']);
    await page.getByLabel('Discount').fill('');
    await page.getByRole('button', { name: 'Book the delivery' }).click();
    await eventually(async () => (await errors(page)).length, 1);
    expect(await line(page, 1).locator('.mantine-InputWrapper-error').count()).toBe(1);
    expect(await deliveries()).toHaveLength(before);
    await page.getByRole('button', { name: 'Empty the form' }).click();
    expect(await line(page, 1).getByLabel('Packs').inputValue()).toBe('');
  });

  it('begins with what Today says is to be bought', async () => {
    const address = `/shelves/deliveries/new?consumableId=${book.capsule.id}&packs=5`;
    const page = await open('owner', address, { width: 820, height: 1180 });
    const product = productOf(page, 1);
    await product.waitFor();
    expect(await product.inputValue()).toBe('Paste in capsules, Enamel light');
    expect(await line(page, 1).getByLabel('Packs').inputValue()).toBe('5');
    await line(page, 1).getByText('not bought before').waitFor();
    await page.getByRole('button', { name: 'Add a line' }).click();
    await page.getByRole('button', { name: 'Remove line 1' }).click();
    expect(await product.inputValue()).toBe('');
    await shot(page, 'receive-820');
  });
});

describe('deliveries', () => {
  it('are found by reference, supplier and day; the address keeps it', async () => {
    const page = await open('auditor', '/shelves/deliveries');
    expect(await page.getByRole('link', { name: 'Book a delivery' }).count()).toBe(0);
    const rows = page.getByRole('table', { name: 'Deliveries' }).locator('tbody tr');
    await eventually(() => rows.count(), 2);
    await page.getByLabel('Reference').fill('dn-1');
    await eventually(() => rows.count(), 1);
    await page.reload();
    await eventually(() => rows.count(), 1);
    await page.getByLabel('To day').fill('2026-01-31');
    await page.getByText('Nothing matches').waitFor();
    await page.waitForURL(/to=2026-01-31/);
  });

  it('show landed cost per unit and what is left, print, and lead to the balance', async () => {
    const id = (await deliveries()).find(({ reference }) => reference === 'DN-1')?.id ?? '';
    const page = await open('auditor', `/shelves/deliveries/${id}`);
    const rows = page.getByRole('table', { name: 'Lines' }).locator('tbody tr');
    expect(await rows.first().textContent()).toMatch(/€149\.76.*18\.72 EUR\/g8\u00a0g€149\.76/);
    expect(await rows.last().textContent()).toMatch(/not stated.*€9\.36.*0\.0936 EUR\/piece/);
    expect(await page.getByText('Freight is spread by the value of the lines.').count()).toBe(1);
    expect(await page.getByRole('link', { name: 'Reverse the delivery' }).count()).toBe(0);
    await page.emulateMedia({ media: 'print' });
    expect(await page.getByRole('button', { name: 'Print' }).count()).toBe(0);
    await page.emulateMedia({ media: 'screen' });
    await page.getByRole('link', { name: 'Balance of Paste, Body 2' }).click();
    await page.getByRole('region', { name: 'One delivery line' }).waitFor();
  });

  it('are reversed with a note while all is there, and not afterwards', async () => {
    const id = (await deliveries()).find(({ reference }) => reference === 'DN-2')?.id ?? '';
    const page = await open('manager', `/shelves/deliveries/${id}`);
    await page.getByRole('link', { name: 'Reverse the delivery' }).click();
    await page.waitForURL(/do=reverse/);
    const ask = page.getByRole('dialog', { name: 'Reverse this?' });
    await ask.getByText('All 2 lines of the delivery from Northgate Supply').waitFor();
    await ask.getByRole('button', { name: 'Reverse' }).click();
    await eventually(() => errors(page), ['Please fill this in']);
    await ask.getByLabel('Why').fill('It was for somebody else.');
    await ask.getByRole('button', { name: 'Reverse' }).click();
    await page.getByText('“It was for somebody else.”').waitFor();
    expect(await page.getByRole('link', { name: 'Reverse the delivery' }).count()).toBe(0);
  });

  it('are accessible', async () => {
    const id = (await deliveries())[0]?.id ?? '';
    const page = await open('manager', `/shelves/deliveries/${id}`);
    await page.getByRole('table').waitFor();
    await expectAccessibleLooks(page, 'delivery');
    await page.goto(`${web.url}/shelves/deliveries/new`);
    await page.getByRole('button', { name: 'Book the delivery' }).waitFor();
    await expectAccessibleLooks(page, 'delivery-new');
  });
});

describe('counting a location', () => {
  const there = async () => {
    const { items } = await book.book.done<{ items: { onHand: string }[] }>('GET', '/stock');
    return items.map((one) => one.onHand).sort();
  };

  it('shows the differences before it books them, in one go', async () => {
    const page = await open('assistant', '/shelves');
    await page.getByRole('link', { name: 'Count' }).click();
    await page.getByText('Where do you count?').waitFor();
    await page.getByLabel('Location').selectOption('Store');
    await page.getByRole('heading', { level: 1, name: 'Count: Store' }).waitFor();
    await page.getByRole('button', { name: 'Look at the differences' }).click();
    await page.getByText('Nothing is counted yet.').waitFor();
    const strips = page.getByLabel('Really there: Clear matrix strip');
    const paste = page.getByLabel('Really there: Paste, Body 2');
    await strips.fill('1.5');
    await paste.fill('-1');
    await page.getByRole('button', { name: 'Look at the differences' }).click();
    await eventually(
      () => errors(page),
      ['Must be a whole number: this is counted in pieces', 'Must not be less than nothing'],
    );
    await strips.fill('97');
    await strips.press('Enter');
    await page.keyboard.press('Control+A');
    await page.keyboard.type('8');
    await page.getByText('2 of 2 counted').waitFor();
    await page.reload();
    expect(await strips.inputValue()).toBe('97');
    await expectAccessible(page);
    await page.getByRole('button', { name: 'Look at the differences' }).click();
    await page.waitForURL(/step=review/);
    await page.getByText('1 line is as the book expects.').waitFor();
    const rows = page.getByRole('table', { name: 'Differences' }).locator('tbody tr');
    expect(await rows.allTextContents()).toEqual([
      'Clear matrix stripStorenot stated100\u00a0pieces97\u00a0pieces−\u20093\u00a0pieces',
    ]);
    expect(await there()).toEqual(['100', '8']);
    await page.getByRole('button', { name: 'Book the count' }).click();
    await page.getByText('Counted 2 lines: 1 difference booked.').waitFor();
    expect(await there()).toEqual(['8', '97']);
    await page.getByRole('button', { name: 'See the differences' }).click();
    await page.waitForURL(/account=count/);
    await page.getByText('Missing at a count').waitFor();
  });

  it('says beside the line what only the service knows', async () => {
    const page = await open('assistant', `/shelves?do=count&consumableId=${book.paste.id}`, {
      refusals: [422],
    });
    await page.getByRole('heading', { level: 1, name: 'Count: Paste, Body 2' }).waitFor();
    await page.getByLabel('Really there: Paste, Body 2').fill('9');
    await page.getByRole('button', { name: 'Look at the differences' }).click();
    await page.getByRole('button', { name: 'Book the count' }).click();
    await page.getByRole('alert').getByText('Is more than was ever received').waitFor();
    expect(await there()).toEqual(['8', '97']);
    await page.getByRole('button', { name: 'Back to counting' }).click();
    await page.getByRole('button', { name: 'As expected: Paste, Body 2' }).click();
    await page.getByRole('button', { name: 'Look at the differences' }).click();
    await page.getByText('Everything is as the book expects.').waitFor();
  });

  it('is closed to the auditor', async () => {
    const page = await open('auditor', `/shelves?do=count&locationId=${book.store}`);
    await page.getByRole('table', { name: 'Stock by consumable' }).waitFor();
  });
});
