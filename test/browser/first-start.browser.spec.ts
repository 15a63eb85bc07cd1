import { afterAll, afterEach, beforeAll, expect, it } from '@jest/globals';
import type { Page } from 'playwright-core';
import { DataSource } from 'typeorm';
import { issueFirstStartLink } from '#lib/access';
import {
  expectAccessible,
  openBrowser,
  shot,
  startWebService,
  type TestBrowser,
  type WebService,
} from './harness/index.js';

let browser: TestBrowser;
let web: WebService;

beforeAll(async () => {
  [browser, web] = await Promise.all([openBrowser(), startWebService()]);
});

afterEach(() => browser.closePages());

afterAll(async () => {
  await browser.close();
  await web.stop();
});

async function openLink(page: Page): Promise<string> {
  const token = await issueFirstStartLink(web.service.app.get(DataSource));
  const address = `${web.url}/first-start?token=${token ?? 'none'}`;
  await page.goto(address);
  await page.getByRole('heading', { level: 1 }).waitFor();
  return address;
}

async function choose(page: Page, label: string, typed: string, option: string): Promise<void> {
  const field = page.getByRole('combobox', { name: label });
  await field.fill(typed);
  await page.getByRole('option', { name: option }).click();
}

it.each(['light', 'dark'] as const)('is accessible in %s', async (colorScheme) => {
  for (const width of [1440, 820]) {
    const page = await browser.open({ colorScheme, width, height: 1180 });
    await openLink(page);
    await expectAccessible(page);
    await shot(page, `first-start-${width}-${colorScheme}`);
    await page.getByRole('button', { name: 'Open the book' }).click();
    await page.getByText('Please fill this in').first().waitFor();
    await expectAccessible(page);
    await shot(page, `first-start-wrong-${width}-${colorScheme}`);
  }
});

it('says what is wrong beside each field, then opens the book and signs its owner in', async () => {
  const page = await browser.open({ refusals: [400] });
  const address = await openLink(page);
  await page.getByRole('button', { name: 'Open the book' }).click();
  expect(await page.getByText('Please fill this in').count()).toBe(5);
  expect(await page.getByRole('combobox', { name: 'Time zone' }).inputValue()).toBe(
    'Europe/Berlin',
  );
  await page.getByLabel('Name of the practice').fill('Practice at the Old Mill');
  await choose(page, 'Time zone', 'Vien', 'Europe/Vienna');
  await choose(page, 'Currency', 'EUR', 'EUR · Euro');
  await page.getByLabel('How teeth are written').selectOption('universal');
  await page.getByLabel('Name', { exact: true }).fill('Dr. Ilse Brandt');
  await page.getByLabel('Sign-in name').fill('two words');
  await page.getByLabel('Password', { exact: true }).fill('short');
  await page.getByRole('button', { name: 'Open the book' }).click();
  await page.getByText('Must be at least 10 characters').waitFor();
  await page.getByLabel('Password', { exact: true }).fill('a long pass phrase');
  await page.getByRole('button', { name: 'Open the book' }).click();
  await page.getByText('Must be 2 to 120 letters', { exact: false }).waitFor();
  expect(await page.getByLabel('Sign-in name').getAttribute('aria-invalid')).toBe('true');
  await page.getByLabel('Sign-in name').fill('ilse.brandt');
  await page.getByRole('button', { name: 'Open the book' }).click();
  await page.waitForURL('**/today');
  await page.getByText('Practice at the Old Mill').waitFor();
  await page.getByText('Dr. Ilse Brandt').waitFor();
  await page.goto(address);
  await page.getByText('This link does not open the book any more.').waitFor();
  await expectAccessible(page);
});
