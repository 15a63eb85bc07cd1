import { afterAll, afterEach, beforeAll, describe, expect, it } from '@jest/globals';
import type { SmallBook } from '../book/book.js';
import { PASSWORD } from '../http/service.js';
import {
  expectAccessibleLooks,
  FixedClock,
  openBrowser,
  openBusyBook,
  shot,
  signIn,
  startWebService,
  type TestBrowser,
  TODAY,
  type WebService,
} from './harness/index.js';

let browser: TestBrowser;
let web: WebService;
let book: SmallBook;

beforeAll(async () => {
  [browser, web] = await Promise.all([
    openBrowser(),
    startWebService({ clock: new FixedClock(TODAY) }),
  ]);
  book = await openBusyBook(web.service, 'mill');
});

afterEach(() => browser.closePages());

afterAll(async () => {
  await browser.close();
  await web.stop();
});

describe('today', () => {
  it('lists what needs somebody, the most urgent kind first, with reason and figures', async () => {
    const page = await browser.open();
    await signIn(page, web.url, 'mill.manager');
    const kinds = await page.locator('#content h2').allTextContents();
    expect(kinds).toEqual([
      'Held lots still on the shelf',
      'Expired on the shelf',
      'Used, but not in the book',
      'Running low',
      'Expires soon',
    ]);
    const expired = page.getByRole('region', { name: 'Expired on the shelf' });
    expect(await expired.getByRole('listitem').textContent()).toContain(
      '4.8\u00a0mL of Etchant gel (lot E-1) in Store expired on 30 Apr 2026.',
    );
    const low = page.getByRole('region', { name: 'Running low' }).getByRole('listitem').first();
    expect(await low.textContent()).toMatch(/Suggested5\u00a0packs/);
    expect(await low.textContent()).toMatch(/Order cost€45\.00/);
    // By whose word the level holds, and the way to what ordering makes of it.
    expect(await low.textContent()).toContain('as typed in at the consumable.');
    const way = await low.getByRole('link', { name: 'See it in ordering' }).getAttribute('href');
    expect(way).toBe(`/ordering/items/${book.strip.id}`);
  });

  it('leads to the one thing that settles it, as far as the role may do it', async () => {
    const page = await browser.open();
    await signIn(page, web.url, 'mill.manager');
    const expired = page.getByRole('region', { name: 'Expired on the shelf' });
    await expired.getByRole('link', { name: 'Write off' }).click();
    await page.waitForURL(/\/shelves\?holdingId=[0-9a-f-]{36}&do=write-off$/);
    await page.goBack();
    const low = page.getByRole('region', { name: 'Running low' });
    await low.getByRole('link', { name: 'Book the delivery' }).click();
    await page.waitForURL('**/shelves/deliveries/new?**');
    const search = new URL(page.url()).searchParams;
    expect(Object.fromEntries(search)).toEqual({ consumableId: book.strip.id, packs: '5' });
  });

  it('offers the assistant no booking that only the office may do', async () => {
    const page = await browser.open();
    await signIn(page, web.url, 'mill.assistant', '/today');
    const links = page.locator('#content').getByRole('link');
    await page.getByRole('region', { name: 'Running low' }).waitFor();
    const names = await links.allTextContents();
    expect(names).toContain('Write off');
    expect(names).not.toContain('Book the delivery');
    expect(names).not.toContain('Send back');
  });

  it('keeps its filters in the address', async () => {
    const page = await browser.open();
    await signIn(page, web.url, 'mill.manager');
    await page.getByLabel('Kind').selectOption('expires within N days');
    await page.getByLabel('Search').fill('capsule');
    await page.waitForURL('**/today?**q=capsule**');
    await page.reload();
    await page.getByRole('region', { name: 'Expires soon' }).waitFor();
    expect(await page.locator('#content h2').allTextContents()).toEqual(['Expires soon']);
    expect(await page.locator('#content h3').allTextContents()).toEqual([
      'Paste in capsules, Enamel light',
    ]);
    await page.goto(`${web.url}/today?kind=made+up&within=-5&q=`);
    await page.getByRole('region', { name: 'Running low' }).waitFor();
    expect(await page.locator('#content h2').count()).toBe(5);
    await page.getByLabel('Search').fill('nothing is called this');
    await page.getByText('Nothing matches').waitFor();
  });

  it('speaks German, with its dates, numbers and money', async () => {
    const page = await browser.open();
    await signIn(page, web.url, 'mill.manager');
    await page.getByLabel('Language').selectOption('de');
    const expired = page.getByRole('region', { name: 'Im Regal verfallen' });
    expect(await expired.getByRole('listitem').textContent()).toContain(
      '4,8\u00a0ml Etchant gel (Charge E-1) in Store: verfallen am 30.04.2026.',
    );
    expect(await page.getByText('45,00\u00a0€').count()).toBe(1);
    await shot(page, 'today-1440-german');
  });

  it('comes back after the session has ended in the middle of work', async () => {
    const page = await browser.open({ refusals: [401] });
    await signIn(page, web.url, 'mill.manager');
    await page.context().clearCookies();
    await page.getByLabel('Warn before expiry').selectOption('90');
    await page.waitForURL('**/sign-in?**');
    await page.getByLabel('Sign-in name').fill('mill.manager');
    await page.getByLabel('Password', { exact: true }).fill(PASSWORD);
    await page.getByRole('button', { name: 'Sign in' }).click();
    await page.waitForURL('**/today?within=90');
  });

  it('is accessible', async () => {
    const page = await browser.open();
    await signIn(page, web.url, 'mill.manager');
    await page.getByRole('region', { name: 'Running low' }).waitFor();
    await expectAccessibleLooks(page, 'today');
  });

  it('prints without what only a screen needs', async () => {
    const page = await browser.open();
    await signIn(page, web.url, 'mill.manager');
    await page.emulateMedia({ media: 'print' });
    expect(await page.getByRole('navigation').count()).toBe(0);
    expect(await page.getByRole('button', { name: 'Print' }).count()).toBe(0);
    await shot(page, 'today-print');
  });
});
