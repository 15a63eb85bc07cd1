import { afterAll, afterEach, beforeAll, describe, expect, it } from '@jest/globals';
import type { Page } from 'playwright-core';
import type { Role } from '#lib/platform';
import {
  expectAccessible,
  expectAccessibleLooks,
  openBrowser,
  shot,
  signInByHand,
  startWebService,
  type TestBrowser,
  type WebService,
} from './harness/index.js';

let browser: TestBrowser;
let web: WebService;

beforeAll(async () => {
  [browser, web] = await Promise.all([openBrowser(), startWebService()]);
  await web.service.openPractice('mill');
});

afterEach(() => browser.closePages());

afterAll(async () => {
  await browser.close();
  await web.stop();
});

const problemOf = (page: Page) => page.getByRole('alert').textContent();

async function tryToSignIn(page: Page, name: string, password: string): Promise<void> {
  await page.getByLabel('Sign-in name').fill(name);
  await page.getByLabel('Password', { exact: true }).fill(password);
  await page.getByRole('button', { name: 'Sign in' }).click();
}

describe('signing in', () => {
  const ALL = [
    ...['Today', 'Chairside', 'Visits', 'Shelves', 'Ordering', 'Costs', 'Quotes', 'Trace'],
    'Set-up',
  ];
  const LANDINGS: readonly [role: Role, path: string, shown: string[]][] = [
    ['assistant', '/chairside', ['Today', 'Chairside', 'Visits', 'Shelves']],
    ['manager', '/today', ALL],
    ['dentist', '/costs', ALL],
    ['auditor', '/trace', ALL.filter((name) => name !== 'Chairside')],
    ['owner', '/today', ALL],
  ];

  it.each(LANDINGS)(
    'leads the %s to %s and shows what the role may do',
    async (role, to, shown) => {
      const page = await browser.open();
      await signInByHand(page, web.url, `mill.${role}`);
      expect(new URL(page.url()).pathname).toBe(to);
      const links = page
        .getByRole('navigation', { name: 'Screens', exact: true })
        .getByRole('link');
      expect(await links.allTextContents()).toEqual(shown);
    },
  );

  it('says beside the fields what is missing, and above them what is wrong', async () => {
    const page = await browser.open({ refusals: [401] });
    await page.goto(`${web.url}/sign-in`);
    await page.getByRole('button', { name: 'Sign in' }).click();
    const name = page.getByLabel('Sign-in name');
    expect(await name.getAttribute('aria-invalid')).toBe('true');
    expect(await name.evaluate((field) => field.matches(':focus'))).toBe(true);
    expect(await page.getByText('Please fill this in').count()).toBe(2);
    await tryToSignIn(page, 'mill.assistant', 'not the pass phrase');
    expect(await problemOf(page)).toBe('The name or the password is not right.');
    expect(await page.getByText('Please fill this in').count()).toBe(0);
    await expectAccessible(page);
    await shot(page, 'sign-in-wrong');
  });

  it('says how long a name is closed after too many tries', async () => {
    const page = await browser.open({ refusals: [401, 429] });
    const body = { signInName: 'mill.auditor', password: 'a wrong pass phrase' };
    for (let tries = 0; tries < 10; tries += 1) {
      await web.service.send('POST', '/api/session', { body });
    }
    await page.goto(`${web.url}/sign-in`);
    await tryToSignIn(page, body.signInName, body.password);
    await page.getByRole('alert').waitFor();
    expect(await problemOf(page)).toBe('Too many tries. This name is closed for 15 minutes.');
  });

  it('keeps the wanted address', async () => {
    const page = await browser.open();
    await page.goto(`${web.url}/today?kind=open+shortfall`);
    await page.waitForURL('**/sign-in?**');
    await tryToSignIn(page, 'mill.manager', 'a long pass phrase');
    await page.waitForURL('**/today?**');
    expect(page.url()).toBe(`${web.url}/today?kind=open+shortfall`);
  });

  it.each(['//elsewhere.example/x', 'https://elsewhere.example', '/\\elsewhere.example'])(
    'does not lead to another site (%s)',
    async (to) => {
      const page = await browser.open();
      await page.goto(`${web.url}/sign-in?to=${encodeURIComponent(to)}`);
      await tryToSignIn(page, 'mill.manager', 'a long pass phrase');
      await page.waitForURL('**/today');
      expect(page.url()).toBe(`${web.url}/today`);
    },
  );
});

describe('the session', () => {
  it('ends by signing out', async () => {
    const page = await browser.open();
    await signInByHand(page, web.url, 'mill.manager');
    await page.getByRole('button', { name: 'Sign out' }).click();
    await page.waitForURL('**/sign-in');
    await page.goto(`${web.url}/today`);
    await page.waitForURL('**/sign-in?**');
  });

  it('does not open what the role may not do', async () => {
    const page = await browser.open();
    await signInByHand(page, web.url, 'mill.assistant');
    await page.goto(`${web.url}/costs`);
    await page.getByText('Your role may not open this screen.').waitFor();
    await page.goto(`${web.url}/no/such/screen`);
    await page.getByText('There is nothing at this address.').waitFor();
    await page.getByRole('link', { name: 'To the start' }).click();
    await page.waitForURL('**/chairside');
  });
});

describe('the language and the theme', () => {
  it('are those of the browser, until one chooses', async () => {
    const page = await browser.open({ locale: 'de-DE', colorScheme: 'dark' });
    await page.goto(`${web.url}/sign-in`);
    await page.getByRole('heading', { name: 'Anmelden' }).waitFor();
    const html = page.locator('html');
    expect(await html.getAttribute('lang')).toBe('de');
    expect(await html.getAttribute('data-mantine-color-scheme')).toBe('dark');
    await page.getByLabel('Sprache').selectOption('en');
    await page.getByRole('heading', { name: 'Sign in' }).waitFor();
    await page.getByLabel('Appearance').selectOption('light');
    expect(await html.getAttribute('data-mantine-color-scheme')).toBe('light');
    await page.reload();
    await page.getByRole('heading', { name: 'Sign in' }).waitFor();
    expect(await html.getAttribute('lang')).toBe('en');
    expect(await html.getAttribute('data-mantine-color-scheme')).toBe('light');
  });
});

describe('looks', () => {
  it('are accessible', async () => {
    const page = await browser.open();
    await page.goto(`${web.url}/sign-in`);
    await page.getByRole('heading', { name: 'Sign in' }).waitFor();
    await expectAccessibleLooks(page, 'sign-in');
    await signInByHand(page, web.url, 'mill.manager');
    await page.getByText('Nothing needs you today.').waitFor();
    await expectAccessibleLooks(page, 'today-empty');
    await page.setViewportSize({ width: 820, height: 1180 });
    await page.getByRole('button', { name: 'Account and settings' }).click();
    await page.getByRole('button', { name: 'Sign out' }).waitFor();
    await expectAccessible(page);
    await page.emulateMedia({ colorScheme: 'dark' });
    await expectAccessible(page);
  });
});
