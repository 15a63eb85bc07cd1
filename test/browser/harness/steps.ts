import { AxeBuilder } from '@axe-core/playwright';
import { expect } from '@jest/globals';
import type { Locator, Page } from 'playwright-core';
import { PASSWORD } from '../../http/service.js';

/** Signs in through the screen and waits for where the person lands. */
export async function signIn(page: Page, url: string, signInName: string): Promise<void> {
  await page.goto(`${url}/sign-in`);
  await page.getByLabel('Sign-in name').fill(signInName);
  await page.getByLabel('Password', { exact: true }).fill(PASSWORD);
  await page.getByRole('button', { name: 'Sign in' }).click();
  await page.waitForURL((address) => !['/sign-in', '/'].includes(address.pathname));
  await page.locator('#content h1').waitFor();
}

const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/** No violation of WCAG 2.2 AA that axe can see. */
export async function expectAccessible(page: Page): Promise<void> {
  // No page holds a foreign frame, so nothing has to be put together in a second window.
  const { violations } = await new AxeBuilder({ page })
    .options({ runOnly: { type: 'tag', values: TAGS }, resultTypes: ['violations'] })
    .setLegacyMode(true)
    .analyze();
  const found = violations.flatMap(({ id, help, nodes }) =>
    nodes.map((node) => `${id}: ${help} at ${node.target.join(' ')} (${node.failureSummary})`),
  );
  expect(found).toEqual([]);
}

const LOOKS = [
  ['light', 1440],
  ['light', 820],
  ['dark', 820],
  ['dark', 1440],
] as const;

/** Accessible in light and dark, at a desk and on a tablet; the page is loaded once. */
export async function expectAccessibleLooks(page: Page, name: string): Promise<void> {
  await page.waitForLoadState('networkidle');
  for (const [colorScheme, width] of LOOKS) {
    await page.emulateMedia({ colorScheme });
    await page.setViewportSize({ width, height: 1180 });
    await expectAccessible(page);
    await shot(page, `${name}-${width}-${colorScheme}`);
  }
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
