import { AxeBuilder } from '@axe-core/playwright';
import { expect } from '@jest/globals';
import type { Locator, Page } from 'playwright-core';
import { PASSWORD } from '../../http/service.js';

/** Signs in through the screen and waits for where the person lands. */
export async function signInByHand(page: Page, url: string, signInName: string): Promise<void> {
  await page.goto(`${url}/sign-in`);
  await page.getByLabel('Sign-in name').fill(signInName);
  await page.getByLabel('Password', { exact: true }).fill(PASSWORD);
  await page.getByRole('button', { name: 'Sign in' }).click();
  await landed(page);
}

async function landed(page: Page): Promise<void> {
  await page.waitForURL((address) => !['/sign-in', '/'].includes(address.pathname));
  await page.locator('#content h1').waitFor();
}

/** By service and person: a session lasts longer than a file of tests. */
const sessions = new Map<string, Promise<string>>();

/**
 * Opens a screen as somebody who signed in before, by default the one that the person lands on. Only
 * tests of signing in and out go through the form: it costs a load of the page and a slow hash.
 */
export async function signIn(
  page: Page,
  url: string,
  signInName: string,
  screen = '/',
): Promise<void> {
  const key = `${url} ${signInName}`;
  const session = sessions.get(key) ?? openSession(url, signInName);
  sessions.set(key, session);
  await page.context().addCookies([{ name: COOKIE, value: await session, url }]);
  await page.context().addInitScript("localStorage.setItem('traybook.signed-in', 'yes')");
  await page.goto(`${url}${screen}`);
  if (screen === '/') await landed(page);
}

const COOKIE = 'traybook_session';

async function openSession(url: string, signInName: string): Promise<string> {
  const answer = await fetch(`${url}/api/session`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ signInName, password: PASSWORD }),
  });
  const value = new RegExp(`${COOKIE}=([^;]+)`).exec(answer.headers.get('set-cookie') ?? '')?.[1];
  if (!value) throw new Error(`Sign-in of ${signInName}: ${answer.status} ${await answer.text()}`);
  return value;
}

const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/** No violation of WCAG 2.2 AA that axe can see; of these tags or rules only. */
export async function expectAccessible(page: Page, runOnly = TAGS): Promise<void> {
  // No page holds a foreign frame, so nothing has to be put together in a second window.
  const { violations } = await new AxeBuilder({ page })
    .options({ runOnly, resultTypes: ['violations'] })
    .setLegacyMode(true)
    .analyze();
  const found = violations.flatMap(({ id, help, nodes }) =>
    nodes.map((node) => `${id}: ${help} at ${node.target.join(' ')} (${node.failureSummary})`),
  );
  expect(found).toEqual([]);
}

const WIDTHS = [1440, 820] as const;

/**
 * Accessible in light and dark, at a desk and on a tablet, with nothing to scroll sideways for; the page
 * is loaded once. Darkness changes colours and nothing else: only these are looked at again.
 */
export async function expectAccessibleLooks(page: Page, name: string): Promise<void> {
  const before = page.viewportSize();
  await page.waitForLoadState('networkidle');
  for (const width of WIDTHS) {
    await page.setViewportSize({ width, height: 1180 });
    await inLight(page, 'light');
    await expectAccessible(page);
    const seen = await page.evaluate<number>('document.documentElement.scrollWidth');
    expect([name, seen]).toEqual([name, Math.min(seen, width)]);
    await shot(page, `${name}-${width}-light`);
    await inLight(page, 'dark');
    await expectAccessible(page, ['color-contrast', 'link-in-text-block']);
    await shot(page, `${name}-${width}-dark`);
  }
  await inLight(page, 'light');
  if (before) await page.setViewportSize(before);
}

async function inLight(page: Page, colorScheme: 'light' | 'dark'): Promise<void> {
  await page.emulateMedia({ colorScheme });
  await page.locator(`html[data-mantine-color-scheme=${colorScheme}]`).waitFor();
}

/** A picture for whoever builds the screen, when TRAYBOOK_SHOTS names a folder. */
export async function shot(page: Page, name: string): Promise<void> {
  const folder = process.env.TRAYBOOK_SHOTS;
  if (folder)
    await page.screenshot({
      path: `${folder}/${name}.png`,
      fullPage: (page.viewportSize()?.width ?? 0) > 1000,
    });
}

/** Waits until something on the page is so; says what it was when it never is. */
export async function eventually<T>(look: () => Promise<T>, expected: T): Promise<void> {
  const until = Date.now() + 30_000;
  let seen = await look();
  while (JSON.stringify(seen) !== JSON.stringify(expected) && Date.now() < until) {
    await new Promise((resolve) => setTimeout(resolve, 50));
    seen = await look();
  }
  expect(seen).toEqual(expected);
}

/** Waits until the service has filled a field: typing at that very moment would mix with it. */
export async function filled(field: Locator): Promise<void> {
  await eventually(async () => (await field.inputValue()) !== '', true);
}
