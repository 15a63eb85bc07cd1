import { afterAll, afterEach, beforeAll, describe, expect, it } from '@jest/globals';
import type { Page } from 'playwright-core';
import { restoration, type SmallBook, visitBody } from '../book/book.js';
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
  s = await openReportsBook(web.service, 'lock');
}, PATIENCE);

afterEach(() => browser.closePages());

afterAll(async () => {
  await browser.close();
  await web.stop();
});

const fresh = (page: Page) =>
  page.locator('table[aria-label="All figures"][aria-busy="false"]').waitFor();
const column = (page: Page, nth: number) =>
  page
    .getByRole('table', { name: 'All figures' })
    .locator(`tbody tr td:nth-child(${nth})`)
    .allTextContents();

async function open(path: string, role = 'dentist'): Promise<Page> {
  const page = await browser.open();
  await signIn(page, web.url, `lock.${role}`, path);
  return page;
}

const cents = (text: string) => Math.round(Number(text.replace(/[^\d.-]/g, '')) * 100);

describe('what restorations leave', () => {
  it('goes from the fee to the contribution, and says what rests on the fee list', async () => {
    const page = await open('/costs/contributions?by=reason');
    await fresh(page);
    // Ten at 80 and ten at 240.
    const way = page.getByRole('img', { name: /^From fees of €3,200\.00 to a contribution of/ });
    await way.waitFor();
    await page.getByText('20 of 20 have no recorded charge').waitFor();
    expect((await column(page, 3)).sort()).toEqual(['€2,400.00', '€800.00']);
    const [material, left] = [await column(page, 4), await column(page, 5)];
    expect(cents(left[0] ?? '')).toBe(240_000 - cents(material[0] ?? ''));
    expect(cents(left[1] ?? '')).toBe(80_000 - cents(material[1] ?? ''));
    await page.getByRole('img', { name: /2 rows of contribution/ }).waitFor();
  });

  it('compares, filters and sorts in the address, and leads to the rows behind', async () => {
    const page = await open('/costs/contributions');
    await fresh(page);
    await page
      .getByRole('group', { name: 'Compare by' })
      .getByRole('button', { name: 'Reason' })
      .click();
    await eventually(() => column(page, 2), ['Cosmetic', 'Decay']);
    await fresh(page);
    await page.getByRole('button', { name: 'Material' }).click();
    await page.waitForURL('**by=template%2Creason&sort=material');
    await page.getByLabel('Reason', { exact: true }).selectOption('decay');
    await eventually(() => column(page, 2), ['Decay']);
    await page.getByRole('table').getByRole('link').focus();
    await page.keyboard.press('Enter');
    await page.waitForURL(`**/costs/restorations?templateId=${s.template}&reason=decay`);
  });

  it('says so when no fee is known, and where to enter one', async () => {
    const filling = restoration(s, { templateId: s.capsuleTemplate, reason: 'wear', shades: [] });
    const visit = visitBody(s, { visitedOn: '2026-04-20', restorations: [filling] });
    await s.book.done('POST', '/visits', visit);
    const page = await open(`/costs/contributions?templateId=${s.capsuleTemplate}`);
    await page.getByText('Restorations without a known fee: 1.').waitFor();
    await page.getByRole('link', { name: 'To the fee list' }).click();
    await page.waitForURL('**/setup/fees');
  });
});

describe('supplies and fees', () => {
  interface Month {
    readonly month: string;
    readonly fees: string;
    readonly material: string;
    readonly bought: string;
  }

  it('show the share of each month, used and bought', async () => {
    const { rows } = await s.book.done<{ rows: Month[] }>('GET', '/reports/supply-share');
    const page = await open('/costs/supplies');
    await fresh(page);
    expect(await column(page, 1)).toEqual([
      ...['April 2026', 'March 2026', 'February 2026', 'January 2026'],
    ]);
    const percent = new Intl.NumberFormat('en-GB', { style: 'percent', maximumFractionDigits: 1 });
    const shares = rows.map(({ fees, material }) =>
      Number(fees) === 0 ? 'none' : percent.format(Number(material) / Number(fees)),
    );
    expect(await column(page, 4)).toEqual(shares);
    // Six packs at 40 in January and at 50 in March.
    expect(await column(page, 5)).toEqual(['€0.00', '€300.00', '€0.00', '€240.00']);
    await page.getByLabel('Share of', { exact: true }).selectOption('income');
    await page.waitForURL('**of=income');
    await page.getByText('Material as a share of income').waitFor();
  });

  it.each([
    ['/costs/contributions?by=reason', 'contributions', /groupBy=reason$/],
    ['/costs/supplies?of=income', 'supply-share', /shareOf=income$/],
  ] as const)('%s is there as a file', async (path, name, asked) => {
    const page = await open(path, 'manager');
    await fresh(page);
    for (const form of ['CSV', 'XLSX', 'PDF']) {
      const link = page.getByRole('link', { name: `Download ${form}` });
      const [download] = await Promise.all([page.waitForEvent('download'), link.click()]);
      expect(download.suggestedFilename()).toBe(`${name}.${form.toLowerCase()}`);
      expect(download.url()).toMatch(asked);
      expect(await download.failure()).toBeNull();
    }
  });
});

describe('both screens', () => {
  it('speak German', async () => {
    const page = await open('/costs/contributions?by=reason');
    await page.getByLabel('Language').selectOption('de');
    await page.getByRole('heading', { name: 'Vom Honorar zu dem, was bleibt' }).waitFor();
    const file = page.getByRole('link', { name: /XLSX/ });
    expect(await file.getAttribute('href')).toMatch(/\.xlsx\?groupBy=reason&lang=de$/);
    await page.getByRole('link', { name: 'Material und Honorare' }).click();
    await page.getByText('Material als Anteil der Honorare').waitFor();
  });

  it('are accessible', async () => {
    const page = await browser.open();
    await signIn(page, web.url, 'lock.manager');
    for (const path of ['contributions?by=template,reason', 'supplies']) {
      await page.goto(`${web.url}/costs/${path}`);
      await fresh(page);
      await expectAccessibleLooks(page, `earned-${path.slice(0, 8)}`);
    }
  });
});
