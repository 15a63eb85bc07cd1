import { afterAll, afterEach, beforeAll, describe, expect, it } from '@jest/globals';
import {
  deliveryLine,
  openSmallBook,
  restoration,
  type SmallBook,
  type Visit,
  visitBody,
} from '../book/book.js';
import {
  expectAccessible,
  expectAccessibleLooks,
  FixedClock,
  openBrowser,
  signIn,
  startWebService,
  type TestBrowser,
  TODAY,
  type WebService,
} from './harness/index.js';

let browser: TestBrowser;
let web: WebService;
let book: SmallBook;
let full: Visit;
let short: Visit;

beforeAll(async () => {
  [browser, web] = await Promise.all([
    openBrowser(),
    startWebService({ clock: new FixedClock(TODAY) }),
  ]);
  book = await openSmallBook(web.service, 'mill');
  await book.book.deliver(book.supplier, '2026-01-12', [
    deliveryLine(book.etchant, book.store, 3, '20', { lotNumber: 'E-1', expiresOn: '2027-04-30' }),
    deliveryLine(book.adhesive, book.store, 1, '110', {
      lotNumber: 'A-1',
      expiresOn: '2027-01-31',
    }),
    deliveryLine(book.paste, book.room, 1, '72', { lotNumber: 'P-1', expiresOn: '2027-05-31' }),
    deliveryLine(book.strip, book.room, 1, '9', { expiresOn: '2026-06-15' }),
    deliveryLine(book.bib, book.store, 1, '25'),
  ]);
  const record = (changes: object) =>
    book.book.done<Visit>('POST', '/visits', visitBody(book, changes));
  full = await record({
    chartReference: 'C-77',
    visitedOn: '2026-05-02',
    restorations: [
      restoration(book, { attempts: 2 }),
      restoration(book, { tooth: '11', reason: 'cosmetic' }),
    ],
  });
  short = await record({
    chartReference: 'C-78',
    visitedOn: '2026-05-03',
    locationId: book.otherRoom,
    usage: [{ consumableId: book.capsule.id, dispensed: '0.1', restoration: 0 }],
  });
  for (let n = 0; n < 60; n += 1) {
    await record({ chartReference: `D-${n}`, visitedOn: '2026-03-02' });
  }
});

afterEach(() => browser.closePages());

afterAll(async () => {
  await browser.close();
  await web.stop();
});

async function open(role: string, path: string, options: Parameters<TestBrowser['open']>[0] = {}) {
  const page = await browser.open(options);
  await signIn(page, web.url, `mill.${role}`, path);
  await page.locator('#content h1').waitFor();
  return page;
}

describe('the list of visits', () => {
  it('filters on the service, keeps it in the address, and pages', async () => {
    const page = await open('auditor', '/visits');
    const links = page.getByRole('table').getByRole('link');
    await links.first().waitFor();
    expect((await links.allTextContents()).slice(0, 2)).toEqual(['C-78', 'C-77']);
    expect(await page.getByRole('link', { name: 'Record a visit' }).count()).toBe(0);
    await page.getByRole('button', { name: 'Next page' }).click();
    await page.waitForURL('**cursor=**');
    await page.getByRole('button', { name: 'First page' }).click();
    await page.getByLabel('From').fill('2026-05-01');
    await page.getByLabel('Room').selectOption({ label: 'Room 2' });
    await page.waitForURL('**locationId=**');
    await page.getByText('C-77').waitFor({ state: 'detached' });
    await page.reload();
    await links.first().waitFor();
    expect(await links.allTextContents()).toEqual(['C-78']);
    await page.goto(`${web.url}/visits?stock=short`);
    await page.getByRole('table').getByText('partly estimated').waitFor();
    expect(await links.allTextContents()).toEqual(['C-78']);
    await page.getByLabel('Chart reference').fill('c-77');
    await page.getByText('Nothing matches').waitFor();
    await page.getByLabel('Stock').selectOption({ label: 'All' });
    await links.first().waitFor();
    expect(await links.allTextContents()).toEqual(['C-77']);
    await page.getByLabel('To', { exact: true }).fill('2026-01-31');
    await page.getByLabel('From').fill('2026-02-01');
    await page.getByText('From is after To.').waitFor();
    await expectAccessible(page);
  });
});

describe('one visit', () => {
  it('shows its restorations, what was used, and the lots, with ways on', async () => {
    const page = await open('manager', `/visits/${full.id}`);
    await page.getByRole('heading', { name: 'Visit of C-77' }).waitFor();
    await page.getByText('class III, decay, Body 2, made 2 times').waitFor();
    await page.getByText('21 M, retake 1').waitFor();
    const paste = page.getByRole('row', { name: /^Paste, Body 2/ }).first();
    expect((await paste.getByRole('cell').allTextContents()).slice(1, 5)).toEqual(
      ['0.06', '0.06', '0.04', '0.06'].map((amount) => `${amount}\u00a0g`),
    );
    const lot = paste.getByRole('link', { name: 'P-1' });
    expect(await lot.getAttribute('href')).toMatch(/^\/trace\?lotId=/);
    const moves = page.getByRole('link', { name: 'Movements of this visit' });
    expect(await moves.getAttribute('href')).toBe(`/shelves/movements?visitId=${full.id}`);
    const why = page.getByRole('link', { name: 'Where it comes from' }).first();
    expect(await why.getAttribute('href')).toContain('/costs/restorations/');
  });

  it('says what was not in the book, and does not offer what the role may not do', async () => {
    const page = await open('assistant', `/visits/${short.id}`);
    await page.getByText('0.25\u00a0g not in the book').waitFor();
    await page.getByText('added by hand').waitFor();
    expect(await page.getByRole('button', { name: 'Reverse' }).count()).toBe(0);
    expect(await page.getByRole('link', { name: 'Trace this visit' }).count()).toBe(0);
    expect(await page.getByRole('link', { name: 'Where it comes from' }).count()).toBe(0);
    await page.emulateMedia({ media: 'print' });
    expect(await page.getByRole('button', { name: 'Print' }).count()).toBe(0);
    expect(await page.getByRole('table').count()).toBe(2);
  });

  it('is reversed with a note, and says so from then on', async () => {
    const page = await open('manager', `/visits/${short.id}`);
    await page.getByRole('button', { name: 'Reverse' }).click();
    const dialog = page.getByRole('dialog');
    await dialog.getByRole('button', { name: 'Reverse' }).click();
    await dialog.getByText('Please fill this in').waitFor();
    await expectAccessible(page);
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'detached' });
    await page.getByRole('button', { name: 'Reverse' }).click();
    await dialog.getByLabel('Why').fill('Entered twice.');
    await dialog.getByRole('button', { name: 'Reverse' }).click();
    await page.getByText('Reversed by mill.manager', { exact: false }).waitFor();
    await page.getByText('Entered twice.').waitFor();
    expect(await page.getByRole('button', { name: 'Reverse' }).count()).toBe(0);
    await page.getByRole('link', { name: 'All visits' }).click();
    await page.getByRole('row', { name: /C-78/ }).getByText('reversed').waitFor();
  });
});

describe('looks', () => {
  it('are accessible', async () => {
    const page = await open('manager', '/visits?q=C-77');
    await page.getByRole('table').getByRole('link').first().waitFor();
    await expectAccessibleLooks(page, 'visits');
    await page.getByRole('table').getByRole('link').first().click();
    await page.getByRole('heading', { name: 'Visit of C-77' }).waitFor();
    await page.getByRole('table').first().waitFor();
    await expectAccessibleLooks(page, 'visit');
  });

  it('speaks German', async () => {
    const page = await open('manager', `/visits/${full.id}`);
    await page.getByLabel('Language').selectOption('de');
    await page.getByRole('heading', { name: 'Besuch von C-77' }).waitFor();
    await page.getByText('Klasse III, Karies', { exact: false }).waitFor();
  });
});
