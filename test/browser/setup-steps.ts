import type { Locator, Page } from 'playwright-core';
import { type PageOptions, signIn, type TestBrowser, type WebService } from './harness/index.js';

export interface Place {
  readonly browser: TestBrowser;
  readonly web: WebService;
}

/** Signs somebody of the practice `mill` in and goes to an address. */
export async function openAs(
  { browser, web }: Place,
  role: string,
  path: string,
  options: PageOptions = {},
): Promise<Page> {
  const page = await browser.open(options);
  await signIn(page, web.url, `mill.${role}`, path);
  await page.locator('#content h1').waitFor();
  return page;
}

/** What stands beside a field that is marked as wrong. */
export async function errorAt(field: Locator): Promise<string> {
  await field.and(field.page().locator('[aria-invalid="true"]')).waitFor();
  const ids = (await field.getAttribute('aria-describedby'))?.split(' ').filter(Boolean) ?? [];
  const words = await Promise.all(
    ids.map((id) => field.page().locator(`[id="${id}"]`).textContent()),
  );
  return words.join(' ');
}

export const dialogOf = (page: Page): Locator => page.getByRole('dialog');

/** Types into the picker that has the focus and takes the first that is found. */
export async function pick(page: Page, typed: string, option: string): Promise<void> {
  await page.keyboard.type(typed);
  await page.getByRole('option', { name: option, exact: true }).waitFor();
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Enter');
}
