import type { Locator, Page } from 'playwright-core';
import { CHART, type PricedBook } from '../pricing/pricing-book.js';
import { type PageOptions, signIn, type TestBrowser, type WebService } from './harness/index.js';

export interface Place {
  readonly browser: TestBrowser;
  readonly web: WebService;
}

export async function openQuotes(
  { browser, web }: Place,
  role = 'dentist',
  options: PageOptions = {},
  address = '/quotes',
): Promise<Page> {
  const page = await browser.open(options);
  await signIn(page, web.url, `mill.${role}`, address);
  await page.getByRole('group', { name: 'Restoration 1' }).waitFor();
  return page;
}

export const row = (page: Page, n: number) => page.getByRole('group', { name: `Restoration ${n}` });
export const ways = (page: Page) => page.getByRole('table', { name: 'Side by side' });
export const cellsOf = (table: Locator, name: string) =>
  table
    .getByRole('row')
    .filter({ has: table.page().getByRole('rowheader', { name }) })
    .first()
    .locator('td')
    .allTextContents();

/** Waits until the template is known: before, a row does not know whether it needs a shade. */
export async function describeRow(of: Locator, tooth: string, reason: string): Promise<void> {
  await of.getByLabel('Tooth').fill(tooth);
  await of.getByLabel('Surfaces').fill('m');
  await of.getByLabel('Reason').selectOption(reason);
  await of.getByLabel('Template').selectOption('Front tooth composite');
  await of.locator('input[name$=minutes][placeholder="40"]').waitFor();
}

/** Tooth 21 with decay and tooth 11 for looks, under the plan whose balance is recorded. */
export async function askTwo(page: Page): Promise<void> {
  await describeRow(row(page, 1), '21', 'Decay');
  await row(page, 1).getByLabel('Shades').selectOption('Body 2 (Paste)');
  await page.getByRole('button', { name: 'Add a restoration' }).click();
  await describeRow(row(page, 2), '11', 'Cosmetic');
  await row(page, 2).getByLabel('Minutes').fill('50');
  await page.getByLabel('Chart reference').fill(CHART);
  await page.getByLabel('Plan', { exact: true }).selectOption('Meadow plan');
  await page.getByText('Recorded for 1 May 2026: €50.00 of the deductible').waitFor();
  await page.getByLabel('Wished per chair hour').fill('300');
  await page.getByLabel('Set-up of a visit, minutes').fill('10');
  await page.getByLabel('Cost of a chair minute').fill('2,5');
  await page.getByRole('button', { name: 'Compare' }).click();
  await ways(page).waitFor();
}

/** The address of the same question, written without the screen. */
export function addressOfTwo(s: PricedBook): string {
  const short = (id: string) => Buffer.from(id.replaceAll('-', ''), 'hex').toString('base64url');
  const rows = `21.M.d.3m.${short(s.template)}...${short(s.paste.id)}*11.M.c.3m.0..50.1`;
  const wishes = 'target=300&setup=10&rate=2.5';
  return `/quotes?r=${rows}&chart=${CHART}&plan=${s.plan}&${wishes}`;
}
