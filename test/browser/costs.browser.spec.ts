import { afterAll, afterEach, beforeAll, describe, expect, it } from '@jest/globals';
import type { Page } from 'playwright-core';
import { type CostedBook, openCostedBook } from './costed-book.js';
import {
  eventually,
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

const table = (page: Page, name: string) => page.getByRole('table', { name });
const cells = (page: Page, name: string, nth = 1) =>
  table(page, name).locator(`tbody tr td:nth-child(${nth})`).allTextContents();

const fresh = (page: Page, name: string) =>
  page.locator(`table[aria-label="${name}"][aria-busy="false"]`).waitFor();

/** Waits until a column says this, of the address that is asked for and not of the one before. */
async function shows(page: Page, nth: number, texts: readonly string[]): Promise<void> {
  await eventually(() => cells(page, 'All figures', nth), [...texts]);
  await fresh(page, 'All figures');
}

describe('what restorations cost', () => {
  it('shows the dentist the middle, the spread and every figure', async () => {
    const page = await browser.open();
    await signIn(page, web.url, 'mill.dentist');
    expect(new URL(page.url()).pathname).toBe('/costs');
    await page.getByText('8 of 10 cost').waitFor();
    const picture = page.getByRole('img', { name: /2 rows of cost/ });
    expect(await picture.locator('svg path').count()).toBeGreaterThan(10);
    expect((await cells(page, 'All figures')).sort()).toEqual([
      'Capsule composite',
      'Front tooth composite',
    ]);
    await page.getByText('The same as the visits of this choice cost together.').waitFor();
    const visits = book.visits.reduce((sum, visit) => sum + Number(visit.materialCost), 0);
    await page
      .getByText(`€${visits.toFixed(2)}`)
      .first()
      .waitFor();
  });

  it('compares by several groups, sorts and filters, all of it in the address', async () => {
    const page = await browser.open();
    await signIn(page, web.url, 'mill.dentist');
    const by = page.getByRole('group', { name: 'Compare by' });
    await by.getByRole('button', { name: 'Month' }).click();
    await shows(page, 2, ['May 2026', 'April 2026', 'March 2026']);
    await by.getByRole('button', { name: 'Template' }).click();
    await page.waitForURL('**/costs?by=month');
    await shows(page, 1, ['March 2026', 'April 2026', 'May 2026']);
    await by.getByRole('button', { name: 'Reason' }).click();
    await shows(page, 1, ['Wear', 'Cosmetic', 'Decay']);
    await page.getByLabel('From', { exact: true }).fill('2026-04-01');
    await shows(page, 1, ['Wear', 'Cosmetic']);
    await table(page, 'All figures').getByRole('button', { name: 'Number' }).click();
    await page.waitForURL('**sort=restorations**');
    await page.reload();
    await fresh(page, 'All figures');
    expect(Object.fromEntries(new URL(page.url()).searchParams)).toEqual({
      ...{ from: '2026-04-01', by: 'reason,month', sort: 'restorations' },
    });
    expect(await cells(page, 'All figures')).toEqual(['Cosmetic', 'Wear']);
    expect(await cells(page, 'All figures', 2)).toEqual(['April 2026', 'May 2026']);
    await page.getByLabel('Reason', { exact: true }).selectOption('fracture');
    await page.getByText('No restoration in this choice.').waitFor();
    await page.getByLabel('Period').selectOption('This month');
    await page.waitForURL('**from=2026-05-01**to=2026-05-04**');
  });

  it('counts every tap and every key, however fast they come', async () => {
    const page = await browser.open();
    await signIn(page, web.url, 'mill.dentist');
    await fresh(page, 'All figures');
    // Before the screen can be drawn again: each toggle has to start from the address of its moment.
    await page.getByRole('group', { name: 'Compare by' }).evaluate((group) => {
      const [template, reason, , month] = group.querySelectorAll('button');
      for (const button of [reason, month, template]) button?.click();
    });
    await page.waitForURL('**by=reason%2Cmonth');
    await shows(page, 1, ['Wear', 'Cosmetic', 'Decay']);
    await page.getByLabel('Reason', { exact: true }).focus();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    await page.waitForURL('**reason=wear**');
    await shows(page, 1, ['Wear']);
    await page.getByLabel('From', { exact: true }).focus();
    await page.keyboard.type('04042026');
    await page.waitForURL('**from=2026-04-04**');
  });

  it('takes an address that means nothing as if it said nothing', async () => {
    const page = await browser.open();
    await signIn(
      page,
      web.url,
      'mill.dentist',
      '/costs?by=weather&from=2026-99-99&reason=joy&sort=luck',
    );
    await table(page, 'All figures').waitFor();
    expect(await cells(page, 'All figures')).toHaveLength(2);
  });

  it('shows the months as a picture and as a table', async () => {
    const page = await browser.open();
    await signIn(page, web.url, 'mill.dentist');
    await page.getByRole('img', { name: /from March 2026 to May 2026/ }).waitFor();
    await page.getByRole('link', { name: 'Show as a table' }).click();
    await page.waitForURL('**months=table');
    await eventually(() => cells(page, 'Month by month'), ['March 2026', 'April 2026', 'May 2026']);
  });

  it('gives the same report as CSV', async () => {
    const page = await browser.open();
    await signIn(page, web.url, 'mill.manager', '/costs?by=reason&reason=cosmetic');
    const link = page.getByRole('link', { name: 'Download CSV' });
    const [download] = await Promise.all([page.waitForEvent('download'), link.click()]);
    expect(download.suggestedFilename()).toBe('restoration-costs.csv');
    expect(download.url()).toMatch(/reason=cosmetic&groupBy=reason$/);
  });
});

describe('from a figure to the price paid', () => {
  it('leads over a group and a restoration to the delivery', async () => {
    const page = await browser.open();
    await signIn(page, web.url, 'mill.dentist', '/costs?by=reason');
    await fresh(page, 'All figures');
    await table(page, 'All figures').getByRole('link', { name: 'Cosmetic' }).click();
    await page.waitForURL('**/costs/restorations?reason=cosmetic');
    await fresh(page, 'Restorations');
    await table(page, 'Restorations').getByRole('button', { name: 'Cost' }).click();
    await page.waitForURL('**sort=cost**');
    await fresh(page, 'Restorations');
    await page.getByRole('link', { name: 'Tooth 11 M of C-1002' }).click();
    await page.getByRole('heading', { level: 1, name: 'Tooth 11 M' }).waitFor();
    const [again] = book.visits[1]?.restorations ?? [];
    await page
      .getByText(`€${again?.cost.total ?? ''}`)
      .first()
      .waitFor();
    const own = page.getByRole('list', { name: 'Material of its own' });
    const paste = own.getByRole('listitem').filter({ hasText: 'attempt 2: done again' }).first();
    expect(await paste.textContent()).toContain('lot P-71, scanned');
    expect(await paste.textContent()).toContain('Pack at €72.00');
    await page.getByText('Common material is split in equal parts').waitFor();
    const sum = page.getByRole('region', { name: 'How it adds up' });
    expect(await sum.locator('dd').last().textContent()).toBe(`€${again?.cost.total ?? ''}`);
    await paste
      .getByRole('link', { name: 'Northgate Supply, delivery of 12 Jan 2026, line 1' })
      .first()
      .click();
    await page.waitForURL(`**/shelves/deliveries/${book.deliveryId}`);
  });

  it('is found again by its address, and says when there is none', async () => {
    const page = await browser.open({ refusals: [404] });
    await signIn(page, web.url, 'mill.auditor');
    const id = book.visits[0]?.restorations[0]?.id ?? '';
    await page.goto(`${web.url}/costs/restorations/${id}`);
    await page.getByRole('heading', { level: 1, name: 'Tooth 21 M' }).waitFor();
    await page.goto(`${web.url}/costs/restorations/00000000-0000-4000-8000-000000000000`);
    await page.getByText('There is no restoration with this id.').waitFor();
  });
});

describe('what helped nobody', () => {
  it('shows what a wrong shade costs, and why things were thrown away', async () => {
    const page = await browser.open();
    await signIn(page, web.url, 'mill.manager', '/costs?from=2026-03-01');
    await page.getByRole('link', { name: 'Waste and wrong shades' }).click();
    await page.waitForURL('**/costs/waste?from=2026-03-01');
    const wrong = page.getByRole('region', { name: 'What a wrong shade cost' });
    await wrong.getByText('Restorations done again: 1; further attempts: 1').waitFor();
    expect(await wrong.textContent()).toContain('€5.50');
    await page.getByLabel('Reason', { exact: true }).selectOption('Wrong shade opened');
    await page.waitForURL('**why=wrong+shade+opened');
    await eventually(() => cells(page, 'Everything that was thrown away', 3), ['composite']);
    await page.getByLabel('From', { exact: true }).fill('2026-05-04');
    await page.getByText('Nothing was thrown away in this choice.').waitFor();
  });

  it('sets a template beside what was really used', async () => {
    const page = await browser.open();
    await signIn(page, web.url, 'mill.dentist', '/costs/templates');
    await page.getByLabel('Template', { exact: true }).selectOption('Front tooth composite');
    await page.waitForURL(`**templateId=${book.s.template}`);
    await page.getByText('Restorations looked at: 3.').waitFor();
    expect(await cells(page, 'Consumable')).toContain('Paste, Body 2');
    await page.getByLabel('Looked at').selectOption('20');
    await page.waitForURL('**last=20');
    await page.reload();
    await page.getByText('Restorations looked at: 3.').waitFor();
  });
});

describe('the screens of costs', () => {
  it('are closed to the assistant', async () => {
    const page = await browser.open();
    await signIn(page, web.url, 'mill.assistant');
    for (const path of ['/costs', '/costs/waste', '/costs/restorations']) {
      await page.goto(`${web.url}${path}`);
      await page.getByText('Your role may not open this screen.').waitFor();
    }
  });

  it('work with the keyboard alone', async () => {
    const page = await browser.open();
    await signIn(page, web.url, 'mill.dentist');
    await page.getByRole('button', { name: 'Month' }).focus();
    await page.keyboard.press('Space');
    await page.waitForURL('**by=template%2Cmonth');
    await shows(page, 2, ['May 2026', 'April 2026', 'March 2026']);
    await table(page, 'All figures').getByRole('link').first().focus();
    await page.keyboard.press('Enter');
    await page.waitForURL('**/costs/restorations?**');
  });

  it('speak German', async () => {
    const page = await browser.open();
    await signIn(page, web.url, 'mill.dentist');
    await page.getByLabel('Language').selectOption('de');
    await page.getByText(/8 von 10 kosten [\d,]+\s€ bis [\d,]+\s€/).waitFor();
    await page.getByRole('heading', { name: 'Monat für Monat' }).waitFor();
  });

  it('are accessible', async () => {
    const id = book.visits[1]?.restorations[0]?.id ?? '';
    const screens = [
      ['report', '/costs?by=template,month&months=table'],
      ['list', '/costs/restorations'],
      ['one', `/costs/restorations/${id}`],
      ['waste', '/costs/waste'],
      ['templates', `/costs/templates?templateId=${book.s.template}`],
    ] as const;
    const page = await browser.open();
    await signIn(page, web.url, 'mill.manager');
    for (const [name, path] of screens) {
      await page.goto(`${web.url}${path}`);
      await page.locator('#content table, #content ol').first().waitFor();
      await expectAccessibleLooks(page, `costs-${name}`);
    }
  });
});
