import { mkdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { chromium, type Page } from 'playwright-core';
import { startDemoService } from './demo-service.js';
import { enterVisit } from './enter-visit.js';
import { PEOPLE } from './practice.js';

// npm run pictures: takes the pictures of README from the demo of the day its tour shows.

const TODAY = '2026-11-25';
const FOLDER = fileURLToPath(new URL('../../../apps/web/pictures/', import.meta.url));

interface Picture {
  readonly name: string;
  readonly role: string;
  readonly address: string;
  readonly width?: number;
  readonly height?: number;
  readonly dark?: boolean;
  /** What is done on the screen before the picture is taken. */
  readonly act?: (page: Page) => Promise<void>;
}

const PICTURES: readonly Picture[] = [
  { name: 'today', role: 'manager', address: '/today' },
  {
    name: 'chairside',
    role: 'assistant',
    address: '/chairside',
    width: 820,
    height: 1180,
    act: (page) => enterVisit(page, 'C-1031'),
  },
  { name: 'shelves', role: 'manager', address: '/shelves?category=Composite' },
  { name: 'ordering', role: 'manager', address: '/ordering' },
  { name: 'costs', role: 'dentist', address: '/costs?from=2026-08-01&to=2026-10-31' },
  { name: 'trace', role: 'auditor', address: '/trace', act: traceLot },
  { name: 'template', role: 'dentist', address: '/setup/templates', dark: true, act: openFirst },
];

async function traceLot(page: Page): Promise<void> {
  await page.locator('#content input').first().fill('K2395');
  await page.keyboard.press('Enter');
  await page.getByText('K2395').first().waitFor();
}

async function openFirst(page: Page): Promise<void> {
  await page.locator('#content tbody a').first().click();
}

async function take(picture: Picture, url: string): Promise<void> {
  const browser = await chromium.launch({
    executablePath: process.env.TRAYBOOK_CHROMIUM ?? '/usr/bin/chromium',
    args: ['--headless', '--no-sandbox', '--disable-gpu', '--disable-background-networking'],
  });
  try {
    const context = await browser.newContext({
      viewport: { width: picture.width ?? 1440, height: picture.height ?? 900 },
      colorScheme: picture.dark ? 'dark' : 'light',
      locale: 'en-GB',
      reducedMotion: 'reduce',
    });
    const person = PEOPLE.find((each) => each.role === picture.role);
    const page = await context.newPage();
    await page.goto(`${url}/sign-in`);
    await page.getByLabel('Sign-in name').fill(person?.signInName ?? '');
    await page.getByLabel('Password', { exact: true }).fill(person?.password ?? '');
    await page.getByRole('button', { name: 'Sign in' }).click();
    await page.locator('#content h1').waitFor();
    await page.goto(`${url}${picture.address}`, { waitUntil: 'networkidle' });
    await picture.act?.(page);
    await page.waitForLoadState('networkidle');
    await page.waitForTimeout(600);
    await page.screenshot({ path: `${FOLDER}${picture.name}.png` });
    console.log(`${picture.name}.png`);
  } finally {
    await browser.close();
  }
}

async function main(): Promise<void> {
  mkdirSync(FOLDER, { recursive: true });
  const service = await startDemoService(TODAY);
  try {
    for (const picture of PICTURES) await take(picture, service.url);
  } finally {
    await service.stop();
  }
}

await main();
