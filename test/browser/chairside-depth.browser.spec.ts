import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import type { Page } from 'playwright-core';
import { restoration, type Visit, visitBody } from '../book/book.js';
import { button, ChairsideBench, card, post } from './chairside-bench.js';
import { eventually, expectAccessibleLooks } from './harness/index.js';

// What is seldom said of a visit and folded away: time, anaesthetic, measures, earlier work; and the
// doses that restorations share by themselves.

let bench: ChairsideBench;

beforeAll(async () => {
  bench = await ChairsideBench.start();
});

beforeEach(() => bench.nextChart());

afterEach(() => bench.browser.closePages());

afterAll(() => bench.stop());

const time = (page: Page) => page.locator('summary').filter({ hasText: 'Time and anaesthetic' });
const cavity = (page: Page, name: string) =>
  card(page, name).locator('summary').filter({ hasText: 'Cavity and earlier work' });

async function visitInTheBook(): Promise<Visit & Record<string, unknown>> {
  const [found] = await bench.inTheBook();
  return bench.book.book.done('GET', `/visits/${found?.id ?? ''}`);
}

describe('a capsule for two teeth', () => {
  it('is charged once, says so, and follows when an amount is changed', async () => {
    const page = await bench.open();
    await bench.enter(page, 'Capsule composite');
    await button(page, 'Same on 22').click();
    const shared = page.getByText(/0\.125.g of it is charged here: 0\.25.g in whole doses/);
    await shared.first().waitFor();
    await eventually(() => shared.count(), 2);
    await button(page, /^Paste in capsules/)
      .first()
      .click();
    const amount = page.getByLabel(/^Amount of Paste in capsules/);
    await amount.fill('0.3');
    await amount.press('Enter');
    await page
      .getByText(/0\.5.g in whole doses serve 2 lines/)
      .first()
      .waitFor();
    await button(page, /^As planned/).click();
    await shared.first().waitFor();
    await post(page);
    await bench.booked(page);
    await page.getByText('What the visit or a tooth shares is split in equal parts.').waitFor();
    const visit = await visitInTheBook();
    const capsules = visit.usage.filter((line) => line.consumable.id === bench.book.capsule.id);
    expect(capsules.map((line) => [line.charged, line.cost])).toEqual([
      ['0.125', '2.75'],
      ['0.125', '2.75'],
    ]);
    await page.getByRole('link', { name: 'Open the visit' }).click();
    await page
      .getByText(/^part of 0\.25.g for 2 lines$/)
      .first()
      .waitFor();
  });
});

describe('time and anaesthetic', () => {
  it('are as the templates plan, until somebody says more', async () => {
    const page = await bench.open();
    await bench.enter(page);
    await time(page).getByText('40 min', { exact: true }).waitFor();
    await time(page).click();
    await page.getByLabel('Chair (min)').fill('an hour');
    await post(page);
    await page.getByText('Whole minutes, at most 1440').waitFor();
    expect(await bench.inTheBook()).toEqual([]);
    await page.getByLabel('Chair (min)').fill('55');
    await page.getByLabel('Assistants (min)').fill('30');
    await page.getByLabel('Without anaesthetic').check();
    await time(page).getByText('55 min, assistants 30 min · without anaesthetic').waitFor();
    await post(page);
    await bench.booked(page);
    expect(await visitInTheBook()).toMatchObject({
      withoutAnaesthetic: true,
      restorations: [{ minutes: 55, assistantMinutes: 30 }],
    });
    await button(page, 'Next visit').click();
    await page.getByLabel('Chart reference').waitFor();
    await time(page).click();
    expect(await page.getByLabel('Chair (min)').inputValue()).toBe('');
    expect(await page.getByLabel('Without anaesthetic').isChecked()).toBe(false);
  });
});

describe('a cavity', () => {
  it('is planned by class and size, or measured with the keyboard', async () => {
    const page = await bench.open();
    await bench.enter(page);
    await cavity(page, '21 M').getByText('12 mm³ · 1 layer · planning value').waitFor();
    await cavity(page, '21 M').focus();
    await page.keyboard.press('Enter');
    await page.keyboard.press('Tab');
    await page.keyboard.type('4');
    await page.keyboard.press('Control+Enter');
    await page.getByText('Length, width and depth belong together').first().waitFor();
    expect(await bench.inTheBook()).toEqual([]);
    await page.getByLabel('Width').fill('5');
    await page.getByLabel('Depth').fill('4');
    await cavity(page, '21 M').getByText('80 mm³ · 2 layers · as measured').waitFor();
    await post(page);
    await bench.booked(page);
    await page.getByRole('link', { name: 'Open the visit' }).click();
    await page.getByText('80 mm³, 2 layers, as measured 4 × 5 × 4').waitFor();
  });
});

describe('work that is done again', () => {
  it('is offered for the same tooth of the chart, and costs a retake as a whole', async () => {
    const first = await bench.book.book.done<Visit>(
      'POST',
      '/visits',
      visitBody(bench.book, {
        chartReference: bench.reference,
        restorations: [restoration(bench.book), restoration(bench.book, { tooth: '11' })],
        visitedOn: '2026-03-02',
      }),
    );
    const page = await bench.open();
    await bench.enter(page);
    await cavity(page, '21 M').getByText('this tooth has earlier work').waitFor();
    await cavity(page, '21 M').click();
    const again = page.getByLabel('Does again');
    expect(await again.locator('option').allTextContents()).toEqual([
      'nothing: it is new',
      '2 Mar 2026, M, Decay',
    ]);
    await again.selectOption({ index: 1 });
    await cavity(page, '21 M').getByText('done again').waitFor();
    await post(page);
    await bench.booked(page);
    await page.getByText('of it for retakes').waitFor();
    const [booked] = await bench.inTheBook();
    const visit = await visitInTheBook();
    expect(visit.retakeCost).toBe(visit.materialCost);
    expect(visit.restorations[0]).toMatchObject({ redoOf: { visitId: first.id } });
    await page.getByRole('link', { name: 'Open the visit' }).click();
    await page.getByRole('link', { name: 'Does the one of 2 Mar 2026 again' }).click();
    await page.waitForURL(`**/visits/${first.id}`);
    const back = page.getByRole('link', { name: /^Done again on / });
    await back.click();
    await page.waitForURL(`**/visits/${booked?.id ?? ''}`);
  });
});

describe('what is folded away', () => {
  it('is readable at a desk and on a tablet', async () => {
    const first = visitBody(bench.book, { chartReference: bench.reference });
    await bench.book.book.done('POST', '/visits', { ...first, visitedOn: '2026-03-02' });
    const page = await bench.open();
    await bench.enter(page);
    await time(page).click();
    await cavity(page, '21 M').click();
    await page.getByLabel('Does again').waitFor();
    await expectAccessibleLooks(page, 'chairside-depth');
  });

  it('speaks German', async () => {
    const page = await bench.open();
    await page.getByLabel('Language').selectOption('de');
    await page.getByText('Zeit und Betäubung').click();
    await page.getByLabel('Ohne Betäubung').check();
    await page.getByText('ohne Betäubung', { exact: true }).waitFor();
  });
});
