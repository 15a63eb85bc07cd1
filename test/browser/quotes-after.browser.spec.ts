import { afterAll, afterEach, beforeAll, describe, expect, it } from '@jest/globals';
import type { Page } from 'playwright-core';
import { openPricedBook, type PricedBook } from '../pricing/pricing-book.js';
import {
  expectAccessible,
  FixedClock,
  openBrowser,
  type PageOptions,
  shot,
  signIn,
  startWebService,
  type TestBrowser,
  TODAY,
  type WebService,
} from './harness/index.js';
import { addressOfTwo, cellsOf, openQuotes, ways } from './quotes-steps.js';

let browser: TestBrowser;
let web: WebService;
let s: PricedBook;

beforeAll(async () => {
  [browser, web] = await Promise.all([
    openBrowser(),
    startWebService({ clock: new FixedClock(TODAY) }),
  ]);
  s = await openPricedBook(web.service, 'mill');
});

afterEach(() => browser.closePages());

afterAll(async () => {
  await browser.close();
  await web.stop();
});

async function openAsked(options: PageOptions = {}): Promise<Page> {
  const page = await openQuotes({ browser, web }, 'dentist', options, addressOfTwo(s));
  await ways(page).waitFor();
  return page;
}

describe('what follows from a quote', () => {
  it('is an estimate for the patient, in the language and way of choice', async () => {
    const page = await openAsked();
    await page.getByLabel('Way shown').selectOption('Cosmetic only');
    await page.waitForURL('**way=cosmetic**');
    await page.getByText('A PDF to take home, for: Cosmetic only.').waitFor();
    await page.getByLabel('Language of the estimate').selectOption('German');
    await page.waitForURL('**lang=de**');
    const [answer, popup] = await Promise.all([
      page.waitForResponse('**/api/quotes/estimate.pdf?language=de'),
      page.waitForEvent('popup'),
      page.getByRole('button', { name: 'Print estimate' }).click(),
    ]);
    expect([answer.status(), answer.headers()['content-type']]).toEqual([200, 'application/pdf']);
    expect(answer.request().postDataJSON()).toMatchObject({ way: 'cosmetic only' });
    await popup.close();
  });

  it('is how many of them pay for the month', async () => {
    const page = await openAsked();
    const month = page.getByRole('region', { name: 'How many of these pay for the month' });
    await month.getByRole('button', { name: 'Work out' }).click();
    await month.getByText('Please fill this in').waitFor();
    await month.getByLabel('Fixed cost of a month').fill('10000');
    await month.getByLabel('Chair hours of a month').fill('60');
    await month.getByLabel('Tooth 21 M, Front tooth composite, Decay').fill('40');
    await month.getByLabel('Tooth 11 M, Front tooth composite, Cosmetic').fill('20');
    await month.getByRole('button', { name: 'Work out' }).click();
    await page.waitForURL('**n=40.20**');
    const table = month.getByRole('table', { name: 'Kinds of work in a month' });
    await table.waitFor();
    // 10,000 / (40 x 177.83 + 20 x 317.84) = 0.7424 of the plan: 29.7 and 14.85. 177.83 in 45
    // minutes are 237.11 an hour, 317.84 in 55 are 346.73.
    expect(await cellsOf(table, 'Tooth 21 M')).toEqual([
      ...['€177.83', '98.8%', '€237.11', '40', '30', '2.', '40'],
    ]);
    expect(await cellsOf(table, 'Tooth 11 M')).toEqual([
      ...['€317.84', '99.3%', '€346.73', '20', '15', '1.', '20'],
    ]);
    await page.reload();
    await table.waitFor();
    expect(await month.getByLabel('Fixed cost of a month').inputValue()).toBe('10000');
    await expectAccessible(page);
    await shot(page, 'quotes-month');
  });
});

describe('the screen of quotes', () => {
  it('is closed to the assistant', async () => {
    const page = await browser.open();
    await signIn(page, web.url, 'mill.assistant', '/quotes');
    await page.getByText('Your role may not open this screen.').waitFor();
  });

  it('speaks German, in the dark', async () => {
    const page = await openAsked({ colorScheme: 'dark' });
    await page.getByLabel('Language', { exact: true }).selectOption('Deutsch');
    await page.getByRole('heading', { level: 1, name: 'Angebote' }).waitFor();
    await page.getByText('Der Grund entscheidet').waitFor();
    await page.getByRole('columnheader', { name: 'Versichertes zuerst' }).waitFor();
    await expectAccessible(page);
    await shot(page, 'quotes-dark-german');
  });

  it('fits a tablet', async () => {
    const page = await openAsked({ width: 820, height: 1180 });
    await expectAccessible(page);
    const wide = () => document.documentElement.scrollWidth > document.documentElement.clientWidth;
    expect(await page.evaluate(wide)).toBe(false);
    await shot(page, 'quotes-narrow');
  });
});
