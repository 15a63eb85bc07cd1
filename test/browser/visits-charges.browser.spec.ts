import { afterAll, afterEach, beforeAll, describe, expect, it } from '@jest/globals';
import type { Locator, Page } from 'playwright-core';
import { postVisit, restoration, type Visit } from '../book/book.js';
import { openPricedBook, type PricedBook } from '../pricing/pricing-book.js';
import {
  eventually,
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
let s: PricedBook;
let visits = 0;

beforeAll(async () => {
  [browser, web] = await Promise.all([
    openBrowser(),
    startWebService({ clock: new FixedClock(TODAY) }),
  ]);
  s = await openPricedBook(web.service, 'fern');
});

afterEach(() => browser.closePages());

afterAll(async () => {
  await browser.close();
  await web.stop();
});

function visitOf(chartReference: string, ...restorations: object[]): Promise<Visit> {
  return postVisit(s, { chartReference, visitedOn: '2026-05-04', restorations });
}

/** Somebody who was told what is left. */
async function toldChart(): Promise<string> {
  visits += 1;
  const chartReference = `C-9${visits}`;
  await s.book.done('POST', '/plan-balances', {
    ...{ planId: s.plan, chartReference, asOf: '2026-05-01' },
    ...{ deductibleLeft: '50', maximumLeft: '1000' },
  });
  return chartReference;
}

const cosmetic = () => restoration(s, { tooth: '11', reason: 'cosmetic' });

async function open(role: string, id: string, options: Parameters<TestBrowser['open']>[0] = {}) {
  const page = await browser.open(options);
  await signIn(page, web.url, `fern.${role}`, `/visits/${id}`);
  await page.getByRole('heading', { name: /^Visit of / }).waitFor();
  return page;
}

const section = (page: Page) => page.getByRole('region', { name: 'What was charged' });
const lineOf = (page: Page, name: string) =>
  section(page).getByRole('listitem').filter({ hasText: name }).first();
const figures = (line: Locator) => line.locator('dl').first().locator('dd').allTextContents();
const fields = (page: Page, name: RegExp) => section(page).getByRole('group', { name });

interface Recorded {
  readonly items: readonly Record<string, unknown>[];
}

const recorded = (id: string) =>
  s.book.done<Recorded>('GET', `/charges?visitId=${id}&show=all`).then(({ items }) => items);

describe('what was charged for a visit', () => {
  it('is proposed from the fee list, worked out by the terms, recorded and corrected', async () => {
    const visit = await visitOf(await toldChart(), restoration(s), cosmetic());
    const page = await open('manager', visit.id);
    const first = () => lineOf(page, '21 M');
    await first().getByText('The fee list of that day says €250.00 (FRONT-1).').waitFor();
    await lineOf(page, '11 M').getByText('€320.00 (LOOKS-1)').waitFor();
    await section(page).getByRole('button', { name: 'Record what was charged' }).click();
    const decay = fields(page, /^21 M/);
    await eventually(
      () => decay.getByLabel('Fee', { exact: false }).first().inputValue(),
      '250.00',
    );
    await decay.getByText('Together €250.00: that is the fee.').waitFor();
    expect(await fields(page, /^11 M/).getByLabel('Patient pays').inputValue()).toBe('320.00');
    await fields(page, /^11 M/).getByText('never charged as other work').waitFor();
    // Without what the plan says nothing adds up, and the field is named.
    await decay.getByLabel('Plan', { exact: true }).selectOption({ label: 'Meadow plan' });
    await decay.getByText('€250.00 less than the fee.').waitFor();
    await section(page).getByRole('button', { name: 'Record', exact: true }).click();
    await decay.getByText('Plan, patient and write-off together must be the fee').waitFor();
    expect(await decay.getByLabel('Patient pays').getAttribute('aria-invalid')).toBe('true');
    expect(await recorded(visit.id)).toEqual([]);
    await section(page)
      .getByRole('button', { name: /^Work out by the plan/ })
      .click();
    await section(page)
      .getByText(/€896\.00 of the yearly maximum are left/)
      .waitFor();
    expect(await decay.getByLabel('Plan pays').inputValue()).toBe('104.00');
    await section(page).getByRole('button', { name: 'Record', exact: true }).click();
    await eventually(() => figures(first()), ['€250.00', '€104.00', '€76.00', '€70.00']);
    const together = ['€570.00', '€104.00', '€396.00', '€70.00'];
    expect(await figures(lineOf(page, 'Together'))).toEqual(together);
    expect(await recorded(visit.id)).toMatchObject([
      { feeCode: 'LOOKS-1', patientPays: '320.00', plan: null, stated: false },
      { feeCode: 'FRONT-1', planPays: '104.00', deductibleUsed: '50.00', stated: false },
    ]);

    await section(page).getByRole('button', { name: 'Record or correct' }).click();
    await decay.getByLabel('Write-off').fill('60');
    await decay.getByText('€10.00 less than the fee.').waitFor();
    await decay.getByLabel('Patient pays').fill('86');
    await decay.getByText('Together €250.00: that is the fee.').waitFor();
    await section(page).getByRole('button', { name: 'Record', exact: true }).click();
    await section(page).getByText('Please fill this in').waitFor();
    await section(page).getByLabel('Why it is changed').fill('As the remittance says.');
    await section(page).getByRole('button', { name: 'Record', exact: true }).click();
    await eventually(() => figures(first()), ['€250.00', '€104.00', '€86.00', '€60.00']);
    const before = 'Before: €250.00, of it plan €104.00, patient €76.00, write-off €70.00.';
    await first().getByText(before).waitFor();
    await first().getByText('Why it was changed: As the remittance says.').waitFor();
    // Only what was changed was sent.
    expect(await recorded(visit.id)).toMatchObject([
      { feeCode: 'FRONT-1', patientPays: '86.00', stated: true, current: true },
      { feeCode: 'LOOKS-1', current: true },
      { feeCode: 'FRONT-1', patientPays: '76.00', current: false },
    ]);
    await expectAccessibleLooks(page, 'charges');
  });

  it('asks for what is left of a plan that nobody was told of, and speaks German', async () => {
    const wear = restoration(s, { tooth: '12', reason: 'wear' });
    const other = await visitOf('C-8', restoration(s), wear);
    const page = await open('dentist', other.id, { refusals: [422] });
    await lineOf(page, '12 M').getByText('The fee list has no fee for it.').waitFor();
    await section(page).getByRole('button', { name: 'Record what was charged' }).click();
    const decay = fields(page, /^21 M/);
    await decay.getByLabel('Plan', { exact: true }).selectOption({ label: 'Meadow plan' });
    await section(page)
      .getByRole('button', { name: /^Work out by the plan/ })
      .click();
    await decay.getByText('Nobody was told by that day').waitFor();
    const way = decay.getByRole('link', { name: 'Enter what was left of the plan' });
    expect(await way.getAttribute('href')).toBe('/setup/balances?chart=C-8&new=1');
    await expectAccessibleLooks(page, 'charges-form');
    await page.setViewportSize({ width: 390, height: 844 });
    await eventually(() => page.evaluate(() => document.documentElement.scrollWidth), 390);
    await decay.scrollIntoViewIfNeeded();
    await shot(page, 'charges-form-390');
    await section(page).getByRole('button', { name: 'Cancel' }).click();
    await page.setViewportSize({ width: 1440, height: 900 });
    await page.getByLabel('Language').selectOption('de');
    await page.getByRole('heading', { name: 'Was berechnet wurde' }).waitFor();
    await page.getByText('Die Honorarliste hat dafür kein Honorar.').waitFor();
    expect(await recorded(other.id)).toEqual([]);
  });

  it('is read by the auditor, and not shown to the assistant', async () => {
    const visit = await visitOf('C-8', restoration(s), cosmetic());
    const charges = visit.restorations.map(({ id }) => ({ restorationId: id }));
    await s.book.done('POST', '/charges', { visitId: visit.id, charges });
    const auditor = await open('auditor', visit.id, { width: 390, height: 844 });
    await lineOf(auditor, '21 M').getByText('FRONT-1').first().waitFor();
    expect(await section(auditor).getByRole('button').count()).toBe(0);
    await eventually(() => auditor.evaluate(() => document.documentElement.scrollWidth), 390);
    await section(auditor).scrollIntoViewIfNeeded();
    await shot(auditor, 'charges-390');
    const assistant = await open('assistant', visit.id);
    await assistant.getByRole('heading', { name: 'What was used' }).waitFor();
    expect(await section(assistant).count()).toBe(0);
  });

  it('stays to be read after the visit was reversed, and nothing more is recorded', async () => {
    const other = await visitOf('C-8', restoration(s));
    const charges = other.restorations.map(({ id }) => ({ restorationId: id }));
    await s.book.done('POST', '/charges', { visitId: other.id, charges });
    await s.book.done('POST', `/visits/${other.id}/reversal`, { note: 'Entered twice.' });
    const page = await open('manager', other.id);
    await section(page).getByText('The visit was reversed: nothing is charged for it.').waitFor();
    expect(await figures(lineOf(page, '21 M'))).toEqual(['€250.00', '€0.00', '€250.00', '€0.00']);
    expect(await section(page).getByRole('button').count()).toBe(0);
  });
});
