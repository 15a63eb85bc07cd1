import { expect } from '@jest/globals';
import type { Page } from 'playwright-core';
import { openBrowser, type TestBrowser } from '../browser/harness/index.js';
import { enterVisit } from './enter-visit.js';
import { PEOPLE } from './practice.js';

/** What each of the four people comes for, done once on the fresh demo. */
const WALKS: Readonly<Record<string, (page: Page) => Promise<void>>> = {
  assistant: recordVisit,
  manager: settleAlert,
  dentist: followCost,
  auditor: traceLot,
};

/** Signs in as each role on the demo and walks its main path; any console error fails. */
export async function walkAsEachRole(url: string): Promise<void> {
  const browser = await openBrowser();
  try {
    for (const [role, walk] of Object.entries(WALKS)) {
      const page = await signedIn(browser, url, role);
      await walk(page);
      await browser.closePages();
    }
  } finally {
    await browser.close();
  }
}

async function signedIn(browser: TestBrowser, url: string, role: string): Promise<Page> {
  const person = PEOPLE.find((each) => each.role === role);
  const page = await browser.open();
  await page.goto(`${url}/sign-in`);
  await page.getByLabel('Sign-in name').fill(person?.signInName ?? '');
  await page.getByLabel('Password', { exact: true }).fill(person?.password ?? '');
  await page.getByRole('button', { name: 'Sign in' }).click();
  await page.locator('#content h1').waitFor();
  return page;
}

async function recordVisit(page: Page): Promise<void> {
  expect(new URL(page.url()).pathname).toBe('/chairside');
  await enterVisit(page, 'C-9001');
  await page.getByRole('button', { name: 'Book the visit' }).click();
  await page.getByRole('heading', { name: 'C-9001 is booked' }).waitFor();
}

async function settleAlert(page: Page): Promise<void> {
  await page.getByRole('heading', { name: 'Expired on the shelf' }).waitFor();
  await page.getByRole('link', { name: 'Write off' }).first().click();
  await page.waitForURL(/do=write-off/);
  await page.getByRole('button', { name: 'Write off' }).last().waitFor();
  await page.goto(new URL('/ordering', page.url()).href);
  await page.getByRole('heading', { level: 1, name: 'To order' }).waitFor();
  await page.getByRole('button', { name: 'Make order' }).first().waitFor();
  await page.getByRole('link', { name: 'Orders', exact: true }).click();
  await page.getByRole('heading', { level: 1, name: 'Orders' }).waitFor();
  await page.locator('#content tbody a').first().waitFor();
}

async function followCost(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'Treating a white spot' }).first().click();
  await page.waitForURL(/\/costs\/restorations/);
  await page.locator('#content tbody a').first().click();
  await page.getByRole('heading', { name: 'How it adds up' }).waitFor();
  await page
    .getByRole('link', { name: /delivery of/ })
    .first()
    .click();
  await page.waitForURL(/\/shelves\/deliveries\//);
}

async function traceLot(page: Page): Promise<void> {
  await page.locator('#content input').first().fill('K2395');
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'Lot K2395' }).waitFor();
  await page.getByText('Used in 28 visits').first().waitFor();
}
