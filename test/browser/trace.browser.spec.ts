import { afterAll, afterEach, beforeAll, describe, expect, it } from '@jest/globals';
import type { Page } from 'playwright-core';
import { type CostedBook, openCostedBook } from './costed-book.js';
import {
  expectAccessibleLooks,
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
let book: CostedBook;

beforeAll(async () => {
  [browser, web] = await Promise.all([
    openBrowser(),
    startWebService({ clock: new FixedClock(TODAY) }),
  ]);
  book = await openCostedBook(web.service, 'mill');
});

afterEach(() => browser.closePages());

afterAll(async () => {
  await browser.close();
  await web.stop();
});

/** As a scanner does it: letters, then Enter. */
async function scan(page: Page, words: string): Promise<void> {
  await page.getByLabel('Lot number or chart reference').fill(words);
  await page.keyboard.press('Enter');
}

const table = (page: Page, name: string) => page.getByRole('table', { name });

describe('from a lot to everybody', () => {
  it('traces a scanned number to deliveries, places, visits and teeth, and balances', async () => {
    const page = await browser.open();
    await signIn(page, web.url, 'mill.auditor');
    expect(new URL(page.url()).pathname).toBe('/trace');
    await page.locator('input:focus').waitFor();
    await page.keyboard.type('p-71');
    await page.keyboard.press('Enter');
    await page.waitForURL(`**/trace?q=p-71&lotId=${book.pasteLot}`);
    await page.getByText('Found: P-71 is a lot number.').waitFor();
    await page.getByRole('img', { name: /The path of 8 g/ }).waitFor();
    const path = page.getByRole('figure').getByRole('listitem');
    expect(await path.allTextContents()).toEqual(
      expect.arrayContaining([
        '8\u00a0g from Northgate Supply to Store',
        '4\u00a0g from Store to Room 1',
        '0.24\u00a0g from Room 1 to Used in 2 visits',
      ]),
    );
    const visits = table(page, 'Who may have got it').locator('tbody tr');
    expect(await visits.first().textContent()).toContain('10 Mar 2026C-100121 M');
    expect(await visits.last().textContent()).toMatch(/C-1002.*scanned/);
    await page.getByText('The label was scanned at the chair. As good as certain.').waitFor();
    await table(page, 'Deliveries, and their balance').getByText('balances').first().waitFor();
    expect(await table(page, 'Carried and opened').textContent()).toContain('StoreRoom 1');
  });

  it('asks which of several products with the same number is meant', async () => {
    const page = await browser.open();
    await signIn(page, web.url, 'mill.auditor');
    await scan(page, 'SAME-1');
    await page.getByText('stands for more than one thing').waitFor();
    await table(page, 'Lots with this number')
      .getByRole('row', { name: /Adhesive/ })
      .getByRole('link')
      .click();
    await page.getByRole('heading', { name: 'Lot SAME-1' }).waitFor();
    await page.reload();
    await page.getByRole('heading', { name: 'Lot SAME-1' }).waitFor();
  });

  it('says what was looked for when nothing is found, and what begins with it', async () => {
    const page = await browser.open();
    await signIn(page, web.url, 'mill.auditor');
    await scan(page, 'ZZ-9');
    await page.getByText('Nothing in the book is called “ZZ-9”.').waitFor();
    await page.getByText('Visits whose chart reference is exactly this: none').waitFor();
    await scan(page, 'P-');
    await page.getByRole('heading', { name: 'Lots whose number begins with it' }).waitFor();
    await page.getByRole('link', { name: 'P-71' }).click();
    await page.getByRole('heading', { name: 'Lot P-71' }).waitFor();
  });

  it('says beside the field what is wrong with it', async () => {
    const page = await browser.open();
    await signIn(page, web.url, 'mill.auditor');
    await page.getByRole('button', { name: 'Trace' }).click();
    await page.getByText('Please fill this in').waitFor();
    const field = page.getByLabel('Lot number or chart reference');
    expect(await field.getAttribute('aria-invalid')).toBe('true');
    await scan(page, 'x'.repeat(61));
    await page.getByText('At most 60 characters').waitFor();
    expect(new URL(page.url()).search).toBe('');
  });

  it('says so when the address names no lot and no chart', async () => {
    const page = await browser.open({ refusals: [404] });
    await signIn(
      page,
      web.url,
      'mill.auditor',
      '/trace?lotId=00000000-0000-4000-8000-000000000000',
    );
    await page.getByText('The book has no lot with this address.').waitFor();
    await page.goto(`${web.url}/trace?chart=NOBODY`);
    await page.getByText('The book has no visit with chart reference “NOBODY”.').waitFor();
  });
});

describe('from a patient to every lot', () => {
  it('traces a chart reference', async () => {
    const page = await browser.open();
    await signIn(page, web.url, 'mill.dentist', '/trace');
    await scan(page, 'c-1001');
    await page.waitForURL('**/trace?q=c-1001&chart=C-1001');
    await page.getByText('Found: C-1001 is a chart reference.').waitFor();
    const visits = await page.locator('#content section h2').allTextContents();
    expect(visits).toEqual(['Visit of 10 Mar 2026', 'Visit of 4 May 2026']);
    const uses = table(page, 'Visit of 10 Mar 2026');
    const paste = uses.getByRole('row', { name: /Paste, Body 2/ });
    expect(await paste.textContent()).toMatch(/P-71.*12 Jan 2026.*Northgate Supply/);
    expect(await uses.getByRole('row', { name: /Clear matrix strip/ }).textContent()).toContain(
      'Lot not stated',
    );
    await paste.getByRole('link', { name: 'P-71' }).click();
    await page.waitForURL(`**/trace?lotId=${book.pasteLot}`);
    await table(page, 'Who may have got it')
      .getByRole('link', { name: /C-1002/ })
      .first()
      .click();
    await page.getByRole('heading', { name: 'Chart C-1002' }).waitFor();
  });

  it('traces one visit', async () => {
    const page = await browser.open();
    await signIn(page, web.url, 'mill.auditor', `/trace?visitId=${book.visits[2]?.id ?? ''}`);
    await page.getByRole('heading', { name: 'Visit of 4 May 2026, chart C-1001' }).waitFor();
    await page.getByRole('link', { name: 'All visits of this chart' }).click();
    await page.waitForURL('**/trace?chart=C-1001');
  });
});

describe('holding a lot', () => {
  const lotK = '/trace?q=K-1';

  it('is written down with its reason, shown at once, and can be changed back', async () => {
    const page = await browser.open();
    await signIn(page, web.url, 'mill.manager', lotK);
    await page.getByRole('button', { name: 'Hold or release' }).click();
    await page.waitForURL('**do=hold');
    const dialog = page.getByRole('dialog');
    await dialog.getByLabel('From now on').selectOption('released');
    await dialog.getByRole('button', { name: 'Write it down' }).click();
    await dialog.getByText('It is released already. Choose what changes').waitFor();
    await dialog.getByText('Please fill this in').waitFor();
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'detached' });
    await page.getByText('Nobody has held this lot.').waitFor();
    await page.getByRole('button', { name: 'Hold or release' }).click();
    await dialog.getByLabel('Why').fill('Notice of the maker of 2 May.');
    await dialog.getByRole('button', { name: 'Write it down' }).click();
    await page.getByText('Lot K-1 is now quarantined.').waitFor();
    await page.getByText('Nobody may use it.').waitFor();
    const history = page.getByRole('region', { name: 'What was decided about it' });
    expect(await history.textContent()).toContain('Notice of the maker of 2 May.');
    await page.getByRole('button', { name: 'Change it back' }).click();
    await dialog.getByLabel('Why').fill('The maker took it back.');
    await dialog.getByRole('button', { name: 'Write it down' }).click();
    await page.getByText('It may be used.').waitFor();
    expect(await history.getByRole('listitem').count()).toBe(2);
  });

  it('is not offered to whoever may not', async () => {
    const page = await browser.open();
    await signIn(page, web.url, 'mill.auditor', `${lotK}&do=hold`);
    await page.getByRole('heading', { name: 'Lot K-1' }).waitFor();
    expect(await page.getByRole('button', { name: 'Hold or release' }).count()).toBe(0);
    expect(await page.getByRole('dialog').count()).toBe(0);
  });

  it('is closed to the assistant altogether', async () => {
    const page = await browser.open();
    await signIn(page, web.url, 'mill.assistant', '/trace');
    await page.getByText('Your role may not open this screen.').waitFor();
  });
});

describe('the screens of a trace', () => {
  it('print with whose paper it is, without what only a screen needs', async () => {
    const page = await browser.open();
    await signIn(page, web.url, 'mill.auditor', `/trace?lotId=${book.pasteLot}`);
    await page.getByRole('heading', { name: 'Lot P-71' }).waitFor();
    await page.emulateMedia({ media: 'print' });
    await page.getByText('Trace of a lot').waitFor();
    expect(await page.getByText('Printed:').isVisible()).toBe(true);
    expect(await page.getByRole('textbox').count()).toBe(0);
    expect(await page.getByRole('button').count()).toBe(0);
    await shot(page, 'trace-print');
  });

  it('speak German', async () => {
    const page = await browser.open({ locale: 'de-DE' });
    await page.goto(`${web.url}/sign-in?to=/trace?lotId=${book.pasteLot}`);
    await page.getByLabel('Anmeldename').fill('mill.auditor');
    await page.getByLabel('Passwort', { exact: true }).fill('a long pass phrase');
    await page.getByRole('button', { name: 'Anmelden' }).click();
    await page.getByRole('heading', { name: 'Charge P-71' }).waitFor();
    await page.getByText('Verwendbar bis 30.06.2027').waitFor();
  });

  it('are accessible', async () => {
    const screens = [
      ['start', '/trace'],
      ['several', '/trace?q=SAME-1'],
      ['nothing', '/trace?q=P-'],
      ['lot', `/trace?lotId=${book.pasteLot}`],
      ['hold', `/trace?lotId=${book.pasteLot}&do=hold`],
      ['chart', '/trace?chart=C-1002'],
    ] as const;
    const page = await browser.open();
    await signIn(page, web.url, 'mill.manager');
    for (const [name, path] of screens) {
      await page.goto(`${web.url}${path}`);
      await page.locator('#content h2, #content [class*="title"]').first().waitFor();
      if (name === 'hold') await page.getByRole('dialog').waitFor();
      await expectAccessibleLooks(page, `trace-${name}`);
    }
  });
});
