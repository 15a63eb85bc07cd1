import { afterAll, afterEach, beforeAll, describe, expect, it } from '@jest/globals';
import type { Page } from 'playwright-core';
import type { SmallBook } from '../book/book.js';
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
import { openReportsBook } from './reports-book.js';

/** Ten visits are recorded first, which takes a slow machine a while. */
const PATIENCE = 180_000;

let browser: TestBrowser;
let web: WebService;
let s: SmallBook;

beforeAll(async () => {
  [browser, web] = await Promise.all([
    openBrowser(),
    startWebService({ clock: new FixedClock(TODAY) }),
  ]);
  s = await openReportsBook(web.service, 'weir');
}, PATIENCE);

afterEach(() => browser.closePages());

afterAll(async () => {
  await browser.close();
  await web.stop();
});

const fresh = (page: Page, name: string) =>
  page.locator(`table[aria-label="${name}"][aria-busy="false"]`).waitFor();
const column = (page: Page, name: string, nth = 1) =>
  page.getByRole('table', { name }).locator(`tbody tr td:nth-child(${nth})`).allTextContents();
const region = (page: Page, name: string) => page.getByRole('region', { name, exact: true });

async function open(path: string, role = 'dentist'): Promise<Page> {
  const page = await browser.open();
  await signIn(page, web.url, `weir.${role}`, path);
  return page;
}

const euros = (value: string) => {
  const size = Number(value);
  const text = new Intl.NumberFormat('en-GB', { style: 'currency', currency: 'EUR' });
  return `${size > 0 ? '+' : ''}${text.format(size)}`;
};

describe('actual and standard cost', () => {
  it('shows the way from one to the other, by price and by usage', async () => {
    const { totals } = await s.book.done<{ totals: Record<string, string> }>(
      'GET',
      '/reports/variances',
    );
    const page = await open('/costs/variances');
    const way = page.getByRole('img', { name: /^From the standard of/ });
    await way.waitFor();
    const { priceVariance = '', usageVariance = '', difference = '' } = totals;
    const label = (await way.getAttribute('aria-label')) ?? '';
    expect(label).toContain(`prices ${euros(priceVariance)}`);
    expect(label).toContain(`usage ${euros(usageVariance)}`);
    await region(page, 'Actual less standard').getByText(euros(difference)).waitFor();
    // The current price is that of the second delivery, a quarter above what half of it cost.
    expect(Number(priceVariance)).toBeLessThan(0);
    expect(Number(usageVariance)).toBeGreaterThan(0);
  });

  it('compares by groups, sorts, and leads to the restorations behind a row', async () => {
    const page = await open('/costs/variances');
    await fresh(page, 'All figures');
    const by = page.getByRole('group', { name: 'Compare by' });
    await by.getByRole('button', { name: 'Reason' }).click();
    await by.getByRole('button', { name: 'Template' }).click();
    await page.waitForURL('**by=reason');
    await eventually(async () => (await column(page, 'All figures')).sort(), ['Cosmetic', 'Decay']);
    await fresh(page, 'All figures');
    await page.getByRole('button', { name: 'Standard', exact: true }).click();
    await page.waitForURL('**sort=standard');
    await page.getByRole('link', { name: 'Cosmetic' }).click();
    await page.waitForURL('**/costs/restorations?reason=cosmetic');
  });
});

describe('chair time', () => {
  it('costs its minutes at the rate, and keeps what was idle apart', async () => {
    const page = await open('/costs/chair-time');
    // 20 restorations of 40 minutes at 120000 / 96000 = 1.25 a minute.
    const head = region(page, 'Of the capacity in use');
    await head.getByText('€1,000.00').waitFor();
    await head.getByText('13.3 h', { exact: true }).first().waitFor();
    const capacity = region(page, 'What the chairs supply, and what was used of it');
    await capacity.getByText('no restoration bears it').waitFor();
    // 124 days from 1 January to 4 May: 120000 * 124 / 365 in all.
    await capacity.getByText('€40,767.12').waitFor();
    await capacity.getByText('€39,767.12').waitFor();
    await page
      .getByRole('group', { name: 'Compare by' })
      .getByRole('button', { name: 'Month' })
      .click();
    await page.waitForURL('**by=template%2Cmonth');
    const months = ['February 2026', 'March 2026', 'April 2026'];
    await eventually(() => column(page, 'All figures', 2), months);
    expect(await column(page, 'All figures', 4)).toEqual(['320 min', '320 min', '160 min']);
  });
});

describe('price changes', () => {
  it('rank the consumables by what they did to the cost, with the delivery behind', async () => {
    const page = await open('/costs/prices');
    await fresh(page, 'By consumable');
    expect(new Set(await column(page, 'By consumable', 5))).toEqual(new Set(['+25%']));
    const effects = (await column(page, 'By consumable', 6)).map((text) =>
      Number(text.replace(/[^\d.-]/g, '')),
    );
    expect(effects).toEqual([...effects].sort((a, b) => b - a));
    await page
      .getByRole('table', { name: 'By consumable' })
      .getByRole('link', { name: 'Paste, Body 2' })
      .click();
    await page.waitForURL(`**consumableId=${s.paste.id}**`);
    await eventually(() => column(page, 'Every new price', 2), ['Paste, Body 2']);
    // Five visits of two restorations since: 10 * 0.084 g at 2.50 more a gram.
    expect(await column(page, 'Every new price', 7)).toEqual(['0.84\u00a0g']);
    expect(await column(page, 'Every new price', 8)).toEqual(['+€2.10']);
    await page.getByRole('table', { name: 'Every new price' }).getByRole('link').click();
    await page.waitForURL('**/shelves/deliveries/**');
  });

  it('say when nothing changed', async () => {
    const page = await open('/costs/prices?from=2026-04-01');
    await page.getByText('No price changed in this period.').waitFor();
  });
});

describe('the costliest habits', () => {
  it('say what they cost a year, what would change it, and what is behind', async () => {
    const page = await open('/costs/habits');
    const habits = page.getByRole('list', { name: 'The costliest habits' }).getByRole('listitem');
    await habits.first().waitFor();
    const wrong = habits.filter({ hasText: 'Wrong shade opened: Paste in capsules' });
    await wrong.getByText('Say the shade aloud').waitFor();
    await wrong.getByText(/^€[\d.]+ a year$/).waitFor();
    const more = habits.filter({ hasText: 'More than the template: Paste, Body 2' });
    expect(await more.textContent()).toContain('Times: 20; in all 0.48\u00a0g');
    await more.getByRole('link', { name: /What the template says/ }).click();
    await page.waitForURL(`**/costs/templates?templateId=${s.template}`);
    await page.goBack();
    await wrong.getByRole('link', { name: /The entries behind it/ }).click();
    await page.waitForURL('**/shelves/movements?**account=waste**');
  });
});

describe('every report', () => {
  const REPORTS = [
    ['/costs/variances?reason=decay', 'variances', /reason=decay&groupBy=template$/],
    ['/costs/chair-time?by=month', 'chair-time', /groupBy=month$/],
    ['/costs/prices?from=2026-01-01', 'price-changes', /from=2026-01-01$/],
    ['/costs/habits', 'habits', /habits\.\w+$/],
    ['/costs/waste?to=2026-05-01', 'waste', /to=2026-05-01$/],
  ] as const;

  it.each(REPORTS)(
    '%s is there as a file for a spreadsheet and for print',
    async (path, name, asked) => {
      const page = await open(path, 'manager');
      await page.locator('#content table, #content ol').first().waitFor();
      for (const form of ['CSV', 'XLSX', 'PDF']) {
        const link = page.getByRole('link', { name: `Download ${form}` });
        const [download] = await Promise.all([page.waitForEvent('download'), link.click()]);
        expect(download.suggestedFilename()).toBe(`${name}.${form.toLowerCase()}`);
        expect(download.url()).toMatch(asked);
        expect(await download.failure()).toBeNull();
      }
    },
  );

  it('is found by keyboard from any other, with its period', async () => {
    const page = await open('/costs/habits?from=2026-02-01&to=2026-04-30');
    await page.getByRole('list', { name: 'The costliest habits' }).waitFor();
    const screens = page.getByRole('navigation', { name: 'Cost screens' });
    expect(
      await screens.getByRole('list', { name: 'What to change' }).getByRole('link').count(),
    ).toBe(4);
    await screens.getByRole('link', { name: 'Against the standard' }).focus();
    await page.keyboard.press('Enter');
    await page.waitForURL('**/costs/variances?from=2026-02-01&to=2026-04-30');
    await fresh(page, 'All figures');
    await page.getByRole('button', { name: 'Dentist' }).focus();
    await page.keyboard.press('Space');
    await page.waitForURL('**by=template%2Cdentist**');
  });

  it('is closed to the assistant', async () => {
    const page = await open('/costs/variances', 'assistant');
    for (const path of [
      '/costs/variances',
      '/costs/chair-time',
      '/costs/prices',
      '/costs/habits',
    ]) {
      await page.goto(`${web.url}${path}`);
      await page.getByText('Your role may not open this screen.').waitFor();
    }
  });

  it('speaks German', async () => {
    const page = await open('/costs/habits');
    await page.getByLabel('Language').selectOption('de');
    await page.getByRole('heading', { name: 'Die teuersten Gewohnheiten' }).waitFor();
    await page.getByRole('link', { name: 'Gegen den Standard' }).click();
    await page.getByRole('heading', { name: 'Vom Standard zu den wirklichen Kosten' }).waitFor();
    await page.getByRole('link', { name: 'Stuhlzeit' }).click();
    await page.getByText('keine Restauration trägt sie').waitFor();
    await page.getByRole('link', { name: 'Preisänderungen' }).click();
    await page.getByText('+25\u00a0%').first().waitFor();
  });

  it('is accessible', async () => {
    const page = await browser.open();
    await signIn(page, web.url, 'weir.manager');
    for (const name of ['variances', 'chair-time', 'prices', 'habits']) {
      await page.goto(`${web.url}/costs/${name}`);
      await page.locator('#content table, #content ol').first().waitFor();
      await expectAccessibleLooks(page, `reports-${name}`);
    }
  });
});
