import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import type { Page } from 'playwright-core';
import { deliveryLine, openSmallBook, type SmallBook } from '../book/book.js';
import {
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
let chart = 1000;
/** Of the test. */
let reference = '';

beforeAll(async () => {
  [browser, web] = await Promise.all([
    openBrowser(),
    startWebService({ clock: new FixedClock(TODAY) }),
  ]);
  book = await openSmallBook(web.service, 'mill');
  await book.book.deliver(book.supplier, '2026-01-12', [
    deliveryLine(book.etchant, book.store, 4, '20', { lotNumber: 'E-1', expiresOn: '2027-04-30' }),
    deliveryLine(book.adhesive, book.store, 2, '110', {
      lotNumber: 'A-1',
      expiresOn: '2027-01-31',
    }),
    deliveryLine(book.paste, book.room, 2, '72', { lotNumber: 'P-1', expiresOn: '2027-05-31' }),
    deliveryLine(book.paste, book.store, 1, '76', { lotNumber: 'P-2', expiresOn: '2028-05-31' }),
    deliveryLine(book.paste, book.store, 1, '76', { lotNumber: 'P-0', expiresOn: '2026-03-31' }),
    deliveryLine(book.capsule, book.store, 1, '110', { lotNumber: 'K-1', expiresOn: '2027-05-31' }),
    deliveryLine(book.strip, book.room, 5, '9', { lotNumber: 'S-1', expiresOn: '2027-05-31' }),
    deliveryLine(book.bib, book.store, 1, '25', { lotNumber: 'B-1' }),
  ]);
});

beforeEach(() => {
  chart += 1;
  reference = `C-${chart}`;
});

afterEach(() => browser.closePages());

afterAll(async () => {
  await browser.close();
  await web.stop();
});

interface Booked {
  readonly id: string;
  readonly materialCost: string;
  readonly restorations: string;
  readonly reversed: boolean;
}

/** What the book knows of the chart of this test. */
async function inTheBook(): Promise<readonly Booked[]> {
  const { items } = await book.book.done<{ items: Booked[] }>(
    'GET',
    `/visits?chartReference=${reference}`,
  );
  return items;
}

async function open(options: Parameters<TestBrowser['open']>[0] = {}, role = 'assistant') {
  const page = await browser.open(options);
  await signIn(page, web.url, `mill.${role}`);
  if (!page.url().includes('/chairside')) await page.goto(`${web.url}/chairside`);
  await page.getByLabel('Chart reference').waitFor();
  return page;
}

const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name });
const card = (page: Page, name: string) => page.getByRole('region', { name, exact: true });
const post = (page: Page) => button(page, /^(Book|Keep) the visit$/).click();

/** Everything but the posting: one side of tooth 21. */
async function enter(page: Page, template = 'Front tooth composite'): Promise<void> {
  await page.getByLabel('Chart reference').fill(reference);
  await page.getByLabel('Dentist').selectOption({ label: 'mill.dentist' });
  await page.getByLabel('Room').selectOption({ label: 'Room 1' });
  await button(page, '21, upper left central incisor').click();
  await page.getByRole('checkbox', { name: 'Mesial' }).click();
  await page.getByRole('radio', { name: 'Decay' }).check();
  await page.getByLabel('How it is made').selectOption({ label: template });
  if (template === 'Front tooth composite') {
    await page.getByRole('checkbox', { name: /^Body 2/ }).check();
  }
}

const planned = (page: Page) =>
  button(page, /^Paste, Body 2 \d/)
    .first()
    .waitFor();

async function booked(page: Page): Promise<void> {
  await page.getByRole('heading', { name: `${reference} is booked` }).waitFor();
}

/** Chromium writes every request that gets no answer to its console. */
async function loseNetwork(page: Page): Promise<void> {
  page.removeAllListeners('console');
  await page.context().setOffline(true);
}

describe('a usual visit', () => {
  it('is recorded with the keyboard alone, and the next one needs less', async () => {
    const page = await open();
    const type = (...keys: string[]) =>
      keys.reduce((before, key) => before.then(() => page.keyboard.press(key)), Promise.resolve());
    await page.getByLabel('Chart reference').focus();
    await page.keyboard.type(reference);
    await type('Tab');
    await page.keyboard.type('mill.d');
    await type('Tab');
    await page.keyboard.type('Room 1');
    await page.getByLabel('Tooth number').focus();
    await page.keyboard.type('21');
    await type('Enter');
    await page.locator('[data-side="middle"]:focus').waitFor();
    await type('m', 'Tab', 'Space', 'Tab', 'Tab', 'Tab');
    await page.keyboard.type('Front tooth');
    await page.getByRole('checkbox', { name: /^Body 2/ }).waitFor();
    await type('Tab', 'Space');
    await planned(page);
    expect(await card(page, '21 M').getByText('€2').count()).toBe(1);
    await type('Control+Enter');
    await booked(page);
    expect((await inTheBook()).map((each) => each.restorations)).toEqual(['21 M decay']);
    expect(await button(page, 'Next visit').evaluate((it) => it.matches(':focus'))).toBe(true);
    await type('Enter');
    await page.getByLabel('Chart reference').waitFor();
    expect(await page.getByLabel('Room').inputValue()).toBe(book.room);
    await page.getByLabel('Tooth number').fill('11');
    await type('Enter');
    await page.locator('[data-side="middle"]:focus').waitFor();
    await type('m');
    expect(await page.getByLabel('How it is made').inputValue()).toBe(book.template);
  });

  it('walks through the teeth with arrows, in either numbering, and the address keeps it', async () => {
    const page = await open();
    await page.locator('[data-tooth="11"]').focus();
    for (const key of ['ArrowRight', 'ArrowRight', 'ArrowDown']) await page.keyboard.press(key);
    expect(await page.locator('[data-tooth]:focus').getAttribute('data-tooth')).toBe('32');
    await page.keyboard.press(' ');
    await card(page, '32').waitFor();
    await page.getByRole('radio', { name: 'Universal' }).check();
    await card(page, '23').waitFor();
    await page.getByRole('radio', { name: 'Primary' }).check();
    await button(page, 'F, upper left primary central incisor').click();
    await card(page, 'F').waitFor();
    await page.getByLabel('Chart reference').fill(reference);
    await page.waitForURL(`**/chairside?**chart=${reference}**`);
    await page.reload();
    await card(page, 'F').waitFor();
    await card(page, '23').waitFor();
    expect(new URL(page.url()).searchParams.get('numbers')).toBe('universal');
    expect(new URL(page.url()).searchParams.get('teeth')).toBe('primary');
    await button(page, 'Start over').click();
    expect(await page.getByRole('region', { name: 'F' }).count()).toBe(0);
  });

  it('is copied to the next tooth, with classes that fit, and shows the cost of each', async () => {
    const page = await open();
    await enter(page);
    await planned(page);
    expect(await card(page, '21 M').getByRole('radio', { name: 'III' }).isChecked()).toBe(true);
    expect(await card(page, '21 M').getByRole('radio', { name: 'II', exact: true }).count()).toBe(
      0,
    );
    await button(page, 'Same on 22').click();
    await button(page, 'Same on 23').click();
    await button(page, 'Same on 24').click();
    await card(page, '24 M').getByRole('radio', { name: 'II', exact: true }).waitFor();
    await button(page, 'Remove 23 M').click();
    await page.getByText('3 restorations').waitFor();
    await post(page);
    await booked(page);
    const rows = await page.locator('tbody tr th').allTextContents();
    expect(rows.map((row) => row.slice(0, 4))).toEqual(['21 M', '22 M', '24 M']);
    const [visit] = await inTheBook();
    const euros = `€${visit?.materialCost}`;
    expect(await page.locator('tfoot td').textContent()).toBe(euros);
    await page.reload();
    await booked(page);
    expect(await button(page, 'Undo').count()).toBe(0);
  });

  it('is booked once when the button is pressed twice', async () => {
    const page = await open();
    await enter(page);
    await planned(page);
    await button(page, 'Book the visit').dblclick();
    await booked(page);
    await page.waitForTimeout(300);
    expect(await inTheBook()).toHaveLength(1);
  });

  it('is undone by whoever may', async () => {
    const page = await open({}, 'dentist');
    await enter(page);
    await post(page);
    await booked(page);
    await button(page, 'Undo').click();
    await button(page, 'Reverse').click();
    await page.getByText('Please fill this in').waitFor();
    expect((await inTheBook())[0]?.reversed).toBe(false);
    await page.getByLabel('Why').fill('Entered for the wrong chart.');
    await button(page, 'Reverse').click();
    await page.getByText('The visit was reversed.', { exact: false }).waitFor();
    expect((await inTheBook())[0]?.reversed).toBe(true);
  });
});

describe('what was different', () => {
  it('is a retake', async () => {
    const page = await open();
    await enter(page);
    await button(page, 'Add a retake').click();
    await page.getByText('21 M, retake 1').waitFor();
    await post(page);
    await booked(page);
    await page.getByText('of it for retakes').waitFor();
    await page.getByRole('link', { name: 'Open the visit' }).click();
    await page.getByText('made 2 times', { exact: false }).waitFor();
  });

  it('is another amount, by steps or typed, and can be as planned again', async () => {
    const page = await open();
    await enter(page);
    await planned(page);
    await button(page, /^Paste, Body 2 0.06/).click();
    await button(page, 'More Paste, Body 2').click();
    await button(page, /^Paste, Body 2 0.07/).waitFor();
    await page.getByLabel('Amount of Paste, Body 2').fill('a little');
    await page.keyboard.press('Enter');
    await page.getByText('Please write a number').waitFor();
    await page.getByLabel('Amount of Paste, Body 2').fill('0,1');
    await page.keyboard.press('Enter');
    await button(page, /^Paste, Body 2 0.1 g/).waitFor();
    await button(page, /^As planned/).click();
    await button(page, /^Paste, Body 2 0.06/).waitFor();
    await page.getByLabel('Amount of Paste, Body 2').fill('0.2');
    await page.keyboard.press('Tab');
    await button(page, /^Paste, Body 2 0.2/).waitFor();
    await post(page);
    await booked(page);
    await page.getByRole('link', { name: 'Open the visit' }).click();
    await page
      .getByRole('row', { name: /^Paste, Body 2 0.06/ })
      .getByText('0.2')
      .first()
      .waitFor();
  });

  it('is another lot, scanned or chosen', async () => {
    const page = await open({ refusals: [422] });
    await enter(page);
    await planned(page);
    const scan = page.getByLabel('Scan or type a lot number');
    await button(page, 'Use this lot').click();
    await page.getByText('Please fill this in').waitFor();
    await scan.fill('no such lot');
    await page.keyboard.press('Enter');
    await page.getByText('No lot in the book has this number').waitFor();
    await scan.fill('p-0');
    await page.keyboard.press('Enter');
    await page.getByText('expired on 2026-05-04', { exact: false }).waitFor();
    await scan.fill('p-2');
    await page.keyboard.press('Enter');
    await page.getByText('lot P-2 · scanned').waitFor();
    await page.getByText('Another lot should have been used first.').waitFor();
    await button(page, 'Do not use lot P-2').click();
    await page.getByText('lot P-1 · ', { exact: false }).first().waitFor();
    await button(page, /^Paste, Body 2 \d/).click();
    await button(page, 'Choose another lot').click();
    await page.getByRole('radio', { name: /^P-2 Store/ }).check();
    await page.getByText('lot P-2 · scanned').waitFor();
    await scan.fill('K-1');
    await page.keyboard.press('Enter');
    await page.getByText('which this visit does not use yet', { exact: false }).waitFor();
    await button(page, 'Add it to the visit').click();
    await page.getByText('lot K-1 · scanned').waitFor();
    await post(page);
    await booked(page);
  });

  it('is something else that was used', async () => {
    const page = await open();
    await enter(page);
    await planned(page);
    await button(page, 'Add something').click();
    await button(page, 'Add to the visit').click();
    await page.getByText('Please fill this in').waitFor();
    await page.getByText('An amount above 0').waitFor();
    await page.getByRole('combobox', { name: 'What else was used' }).fill('Etch');
    await page.getByRole('option', { name: 'Etchant gel' }).click();
    await page.getByLabel('Amount (mL)').fill('0.3');
    await button(page, 'Add to the visit').click();
    await page.getByText('Added by hand').waitFor();
    await button(page, /^Etchant gel 0.3/).waitFor();
    await post(page);
    await booked(page);
  });

  it('is more than the book has: it is recorded anyway', async () => {
    const page = await open();
    await enter(page, 'Capsule composite');
    await button(page, /^Paste in capsules, Enamel light \d/).click();
    await page.getByLabel('Amount of Paste in capsules').fill('50');
    await page.keyboard.press('Enter');
    await page.getByText('It is recorded anyway.', { exact: false }).waitFor();
    await page.getByText('1 not in the book').waitFor();
    await page.getByText('partly estimated').waitFor();
    await shot(page, 'chairside-shortfall');
    await expectAccessible(page);
    await post(page);
    await booked(page);
    await page.getByText('Partly estimated', { exact: false }).waitFor();
  });
});

describe('a wrong entry', () => {
  it('is said beside what is wrong, and nothing is booked', async () => {
    const page = await open();
    await post(page);
    expect(await page.getByText('Please fill this in').count()).toBeGreaterThan(0);
    expect(await page.getByLabel('Chart reference').getAttribute('aria-invalid')).toBe('true');
    await page.locator('input[name="chartReference"]:focus').waitFor();
    await page.getByText('Pick a tooth first').waitFor();
    await page.getByLabel('Tooth number').fill('99');
    await page.keyboard.press('Enter');
    await page.getByText('99 is no tooth in these numbers').waitFor();
    await page.getByLabel('Tooth number').fill('21');
    await page.keyboard.press('Enter');
    await page.getByLabel('Chart reference').fill(reference);
    await page.getByLabel('Dentist').selectOption({ label: 'mill.dentist' });
    await page.getByLabel('Room').selectOption({ label: 'Room 1' });
    await page.getByLabel('Day').fill('2026-05-05');
    await post(page);
    for (const words of [
      'Not after today',
      'Tap at least one face of the tooth',
      'Say why it is made',
      'Choose how it is made',
    ]) {
      await page.getByText(words, { exact: true }).waitFor();
    }
    await expectAccessible(page);
    await page.getByLabel('Day').fill('2026-05-01');
    await page.getByRole('checkbox', { name: 'Distal' }).click();
    await page.getByRole('radio', { name: 'Wear' }).check();
    await page.getByLabel('How it is made').selectOption({ label: 'Front tooth composite' });
    await page.getByRole('checkbox', { name: /^Body 2/ }).waitFor();
    await page.waitForTimeout(200);
    await post(page);
    await page.getByText('This template asks for a shade').waitFor();
    expect(await inTheBook()).toHaveLength(0);
    await page.getByRole('checkbox', { name: /^Body 2/ }).check();
    await post(page);
    await booked(page);
    await page.getByText('1 May 2026', { exact: false }).waitFor();
  });

  it('that only the service sees is led to the control it is about', async () => {
    const page = await open({ refusals: [422] });
    await enter(page);
    await planned(page);
    await button(page, /^Clear matrix strip \d/).click();
    await page.getByLabel('Amount of Clear matrix strip').fill('1.5');
    await page.keyboard.press('Enter');
    await page.getByText('Must be a whole number of pieces').first().waitFor();
    await post(page);
    await page.getByText('Please look at what is marked.').waitFor();
    expect(await inTheBook()).toHaveLength(0);
    await page.getByLabel('Amount of Clear matrix strip').fill('2');
    await page.keyboard.press('Enter');
    await button(page, /^Clear matrix strip 2/).waitFor();
    await post(page);
    await booked(page);
  });
});

describe('without a network', () => {
  it('keeps the visit, says so, survives a reload, and books it exactly once', async () => {
    const page = await open();
    await enter(page);
    await planned(page);
    await loseNetwork(page);
    await page.getByText('No network.', { exact: false }).waitFor();
    await button(page, 'Keep the visit').click();
    await page.getByText('Kept on this device;', { exact: false }).waitFor();
    const waiting = page.getByRole('region', { name: 'On this device' });
    await waiting.getByText('waits for the network').waitFor();
    await expectAccessible(page);
    await shot(page, 'chairside-offline');
    expect(await inTheBook()).toHaveLength(0);
    await page.context().setOffline(false);
    await waiting.getByText('booked', { exact: true }).waitFor();
    expect(await inTheBook()).toHaveLength(1);
    await page.reload();
    await waiting.getByText(reference).waitFor();
    await page.waitForTimeout(500);
    expect(await inTheBook()).toHaveLength(1);
    await button(page, 'Done').click();
    expect(await waiting.count()).toBe(0);
  });

  it('loads again, with what was entered, and several tabs book it once', async () => {
    const page = await open();
    await page.waitForFunction(
      async () => (await (await caches.open('traybook-shell')).keys()).length > 3,
    );
    await page.reload();
    await enter(page);
    await planned(page);
    await loseNetwork(page);
    await page.reload();
    await card(page, '21 M').waitFor();
    await post(page);
    await page.getByText('waits for the network').waitFor();
    const other = await page.context().newPage();
    await other.goto(`${web.url}/chairside`);
    await other.getByText('waits for the network').waitFor();
    await page.context().setOffline(false);
    await page.getByText('booked', { exact: true }).waitFor({ timeout: 20_000 });
    await other.getByText('booked', { exact: true }).waitFor();
    await other.waitForTimeout(500);
    expect(await inTheBook()).toHaveLength(1);
  });

  it('shows a visit that is refused later with its reason, to be corrected', async () => {
    const page = await open({ refusals: [422] });
    await enter(page);
    await planned(page);
    await loseNetwork(page);
    await button(page, 'Keep the visit').click();
    await page.getByText('waits for the network').waitFor();
    const { dentist } = book.book.practice.people;
    await page.evaluate(
      ({ from, to }) => {
        const text = localStorage.getItem('traybook.outbox') ?? '';
        localStorage.setItem('traybook.outbox', text.replaceAll(from, to));
      },
      { from: dentist.id, to: book.book.practice.people.auditor.id },
    );
    await page.context().setOffline(false);
    await page.getByText('not accepted').waitFor();
    await page.getByText('Names a person who is not a dentist', { exact: false }).waitFor();
    await button(page, 'Correct it').click();
    await card(page, '21 M').waitFor();
    await page.getByLabel('Dentist').selectOption({ label: 'mill.dentist' });
    await post(page);
    await booked(page);
    expect(await inTheBook()).toHaveLength(1);
  });
});

describe('looks', () => {
  it.each(['light', 'dark'] as const)('are accessible in %s', async (colorScheme) => {
    for (const width of [1440, 820]) {
      reference = `L-${width}-${colorScheme}`;
      const page = await open(
        { colorScheme, width, height: width === 820 ? 1180 : 900 },
        'manager',
      );
      await expectAccessible(page);
      await shot(page, `chairside-empty-${width}-${colorScheme}`);
      await enter(page);
      await planned(page);
      await button(page, /^Paste, Body 2 \d/).click();
      await button(page, 'Choose another lot').click();
      await page.getByRole('radio', { name: /^P-2/ }).waitFor();
      await expectAccessible(page);
      await shot(page, `chairside-${width}-${colorScheme}`);
      await post(page);
      await booked(page);
      await expectAccessible(page);
      await shot(page, `chairside-booked-${width}-${colorScheme}`);
    }
  });

  it('speaks German', async () => {
    const page = await open();
    await enter(page);
    await planned(page);
    await page.getByLabel('Language').selectOption('de');
    await page.getByRole('heading', { name: 'Was gebraucht wird' }).waitFor();
    await page.getByText('mittlerer Schneidezahn oben links').first().waitFor();
    await shot(page, 'chairside-1440-german');
  });

  it('is not shown to whoever may not record', async () => {
    const page = await browser.open();
    await signIn(page, web.url, 'mill.auditor');
    await page.goto(`${web.url}/chairside`);
    await page.getByText('Your role may not open this screen.').waitFor();
  });
});
