import { afterAll, afterEach, beforeAll, describe, expect, it } from '@jest/globals';
import type { Page } from 'playwright-core';
import { PASSWORD } from '../http/service.js';
import {
  openPlanningBook,
  type PlanningBook,
  type Proposals,
} from '../purchasing/planning-book.js';
import { SetClock } from '../purchasing/post-boxes.js';
import {
  eventually,
  expectAccessible,
  expectAccessibleLooks,
  filled,
  openBrowser,
  type PageOptions,
  shot,
  startWebService,
  type TestBrowser,
  type WebService,
} from './harness/index.js';
import { errorAt, openAs } from './setup-steps.js';

// Monday, 4 May 2026, noon in Berlin.
const clock = new SetClock(new Date('2026-05-04T10:00:00Z'));

let browser: TestBrowser;
let web: WebService;
let s: PlanningBook;

beforeAll(async () => {
  [browser, web] = await Promise.all([openBrowser(), startWebService({ clock })]);
  s = await openPlanningBook(web.service, 'mill');
  await s.book.done('PUT', `/reorder/settings/suppliers/${s.supplier}`, {
    ...{ freight: '7.90', freeFreightFrom: '500', minimumOrder: '20', leadDays: 3 },
    workingDays: ['monday', 'tuesday', 'wednesday', 'thursday', 'friday'],
  });
  await s.book.done('PUT', '/order-rules', {
    ...{ monthlyBudget: '600', approveUpTo: null, lateAfterDays: 2 },
  });
});

afterEach(() => browser.closePages());

afterAll(async () => {
  await browser.close();
  await web.stop();
});

const open = (role: string, path: string, options: PageOptions = {}) =>
  openAs({ browser, web }, role, path, options);
const proposals = () => s.book.done<Proposals>('GET', '/reorder/proposals');
/** What reaches beyond the right edge of the window. */
const beyond = (page: Page) =>
  page.evaluate(() => {
    const wide = window.innerWidth;
    if (document.documentElement.scrollWidth <= wide) return [];
    return [...document.querySelectorAll('#content *')]
      .filter((each) => each.getBoundingClientRect().right > wide + 1)
      .map((each) => `${each.tagName} ${each.className} ${each.textContent?.slice(0, 40)}`);
  });

describe('what to order', () => {
  it('is explained line by line, changed, and becomes an order', async () => {
    const [basket] = (await proposals()).orders.filter((order) => order.supplier !== null);
    const page = await open('manager', '/ordering');
    const section = page.getByRole('region', { name: 'Northgate Supply' });
    await section.getByRole('heading', { level: 3, name: 'Patient bib' }).waitFor();
    expect(await section.getByRole('heading', { level: 3 }).count()).toBe(basket?.lines.length);
    await page.getByText('Left of the month’s budget').waitFor();
    const bib = section.getByRole('listitem').filter({
      has: page.getByRole('heading', { name: 'Patient bib' }),
    });
    const why = bib.getByText(
      /^0\spieces there and on the way, \d+\spieces owed to visits: position/,
    );
    expect(await why.textContent()).toMatch(/are kept for a service of 95\s?%\.$/);
    await bib.getByRole('img', { name: /^Use of Patient bib against what is there/ }).waitFor();
    await bib.getByText('Figures and other ways').click();
    await bib.getByRole('table', { name: 'Without and with the order' }).waitFor();
    await bib.getByText('Another pack').waitFor();
    await expectAccessibleLooks(page, 'ordering-now');
    const packs = bib.getByLabel('Packs of Patient bib');
    await packs.fill('many');
    await bib.getByText('0, or a whole number from 1 on').waitFor();
    const make = section.getByRole('button', { name: 'Make order to Northgate Supply' });
    expect(await make.isDisabled()).toBe(true);
    await packs.fill('7');
    await section.getByText('Changed by you').waitFor();
    await bib.getByText('€28.00').waitFor();
    await make.click();
    await page.waitForURL('**/ordering/orders/*');
    const id = new URL(page.url()).pathname.split('/').at(-1) ?? '';
    const order = await s.book.done<{
      state: string;
      lines: { packs: number; proposed: { packs: number } | null }[];
    }>('GET', `/orders/${id}`);
    expect(order.state).toBe('draft');
    expect(order.lines.map((line) => line.packs)).toContain(7);
    expect(order.lines.every((line) => line.proposed !== null)).toBe(true);
  });
});

describe('an item', () => {
  it('is found in the list, and shows its use, its forecast and its policy', async () => {
    const page = await open('manager', '/ordering/items');
    const table = page.getByRole('table', { name: 'All items' });
    await table.getByRole('link', { name: 'Patient bib' }).waitFor();
    expect(await table.getByRole('rowheader').count()).toBe(0);
    expect(await table.getByRole('row').count()).toBe(9);
    await expectAccessible(page);
    await shot(page, 'ordering-items');
    await page.getByLabel('Search').fill('bib');
    await page.waitForURL('**q=bib**');
    await eventually(() => table.getByRole('row').count(), 2);
    await table.getByRole('link', { name: 'Patient bib' }).click();
    await page.waitForURL(`**/ordering/items/${s.bib.id}`);
    await page.getByRole('heading', { level: 1, name: 'Patient bib' }).waitFor();
    await page.getByRole('img', { name: /^Use by week from/ }).waitFor();
    await page.getByRole('img', { name: 'Range of use over the next 90 days' }).waitFor();
    await page.getByText(/would have lost least/).waitFor();
    await page
      .getByText(/3 working days as the supplier states; no orders on record yet/)
      .first()
      .waitFor();
    await expectAccessibleLooks(page, 'ordering-item');
    const history = page.getByRole('region', { name: 'What was used' }).first();
    await history.getByRole('link', { name: 'As a table' }).click();
    await page.waitForURL('**history=table**');
    await history.getByRole('table', { name: 'What was used' }).waitFor();
  });

  it('takes levels by hand, one-off days and stand-ins, and takes them back', async () => {
    const page = await open('owner', `/ordering/items/${s.bib.id}`);
    await page.getByText('Set something by hand').click();
    const point = page.getByLabel('Reorder point');
    await point.waitFor();
    await point.fill('30');
    await page.getByLabel('Order up to').fill('20');
    await page.getByRole('button', { name: 'Save' }).click();
    expect(await errorAt(page.getByLabel('Order up to'))).toContain('below the reorder point');
    await page.getByLabel('Order up to').fill('120');
    await page.getByRole('button', { name: 'Save' }).click();
    await page.getByText('The reorder point of 30 pieces is set by hand').waitFor();
    await page.getByText('Levels set by hand').first().waitFor();
    await page.getByRole('button', { name: 'Mark days' }).click();
    const dialog = page.getByRole('dialog', { name: 'Mark days' });
    await dialog.getByLabel('From', { exact: true }).fill('2026-04-01');
    await dialog.getByLabel('To', { exact: true }).fill('2026-04-02');
    await dialog.getByLabel('What happened').fill('A course.');
    await dialog.getByRole('button', { name: 'Save' }).click();
    await dialog.waitFor({ state: 'hidden' });
    const back = page.getByRole('button', { name: 'Take back: 1 Apr 2026 to 2 Apr 2026' });
    await back.click();
    await back.waitFor({ state: 'hidden' });
    await page.getByRole('button', { name: 'Name one' }).click();
    const naming = page.getByRole('dialog', { name: 'What may stand in for it' });
    await naming.getByRole('combobox', { name: 'Consumable' }).click();
    await page.getByRole('option', { name: 'Clear matrix strip' }).click();
    await naming.getByRole('button', { name: 'Save' }).click();
    await naming.waitFor({ state: 'hidden' });
    await page.getByText('May stand in', { exact: true }).waitFor();
    await page.getByRole('button', { name: 'Take back: Clear matrix strip' }).click();
    await page.getByText('Nobody has named anything.').waitFor();
    await s.book.done('PUT', `/reorder/settings/consumables/${s.bib.id}`, {});
  });
});

describe('the settings of ordering', () => {
  it('change what the practice wants, what a supplier asks for and how a pack is sold', async () => {
    const page = await open('manager', '/setup/ordering');
    const level = page.getByLabel('Wanted service in %');
    await filled(level);
    await level.fill('100');
    await page.getByRole('button', { name: 'Save' }).click();
    expect(await errorAt(level)).toContain('at most 99.99');
    await level.fill('97,5');
    await page.getByRole('button', { name: 'Save' }).click();
    await page.getByText('Saved. What to order follows it.').waitFor();
    expect(await s.book.done('GET', '/reorder/settings')).toMatchObject({ serviceLevel: '0.975' });
    await page.getByRole('button', { name: 'Change the terms of Northgate Supply' }).click();
    const terms = page.getByRole('dialog', { name: 'Terms of Northgate Supply' });
    await terms.getByLabel('Friday').uncheck();
    await terms.getByRole('button', { name: 'Add closed days' }).click();
    await terms.getByLabel('From', { exact: true }).fill('2026-05-11');
    await terms.getByLabel('To', { exact: true }).fill('2026-05-15');
    await expectAccessible(page);
    await shot(page, 'ordering-terms');
    await terms.getByRole('button', { name: 'Save' }).click();
    await terms.waitFor({ state: 'hidden' });
    expect(await s.book.done('GET', `/reorder/settings/suppliers/${s.supplier}`)).toMatchObject({
      terms: {
        workingDays: ['monday', 'tuesday', 'wednesday', 'thursday'],
        closures: [{ firstDay: '2026-05-11', lastDay: '2026-05-15', note: null }],
      },
    });
    await page.getByRole('combobox', { name: 'Consumable' }).click();
    await page.getByRole('option', { name: 'Patient bib' }).click();
    await page.waitForURL(`**of=${s.bib.id}**`);
    await page.getByRole('button', { name: 'Change Box of 50' }).click();
    const pack = page.getByRole('dialog', { name: 'Box of 50' });
    await pack.getByRole('button', { name: 'Add a step' }).click();
    await pack.getByLabel('Price of a pack').fill('4');
    await pack.getByRole('button', { name: 'Add a step' }).click();
    await pack.getByLabel('From packs').nth(1).fill('3');
    await pack.getByLabel('Price of a pack').nth(1).fill('4.50');
    await pack.getByRole('button', { name: 'Save' }).click();
    expect(await errorAt(pack.getByLabel('Price of a pack').nth(1))).toContain('lower than');
    await pack.getByLabel('Price of a pack').nth(1).fill('3,50');
    await shot(page, 'ordering-prices');
    await pack.getByRole('button', { name: 'Save' }).click();
    await pack.waitFor({ state: 'hidden' });
    await page.getByText('from 1: €4.00 · from 3: €3.50').waitFor();
    await expectAccessible(page);
    await shot(page, 'ordering-settings');
  });
});

it('fits a narrow screen, in German and in the dark, and a dentist changes nothing', async () => {
  const page = await browser.open({
    ...{ width: 390, height: 800, locale: 'de-DE', colorScheme: 'dark' },
  });
  await page.goto(`${web.url}/sign-in`);
  await page.getByLabel('Anmeldename').fill('mill.dentist');
  await page.getByLabel('Passwort', { exact: true }).fill(PASSWORD);
  await page.getByRole('button', { name: 'Anmelden' }).click();
  await page.waitForURL((url) => !['/sign-in', '/'].includes(url.pathname));
  await page.goto(`${web.url}/ordering`);
  await page.getByRole('heading', { level: 1, name: 'Jetzt bestellen' }).waitFor();
  await page.getByRole('heading', { level: 3, name: 'Etchant gel' }).waitFor();
  await page
    .getByText(/für eine Sicherheit von/)
    .first()
    .waitFor();
  expect(await page.getByRole('button', { name: /Bestellung anlegen/ }).count()).toBe(0);
  expect(await beyond(page)).toEqual([]);
  await shot(page, 'ordering-now-390');
  await expectAccessible(page);
  await page.goto(`${web.url}/ordering/items/${s.newShade.id}`);
  await page.getByRole('img', { name: /^Verbrauch je Woche/ }).waitFor();
  await page.getByRole('heading', { name: 'Wie lange Ware braucht' }).waitFor();
  expect(await page.getByRole('button', { name: 'Speichern' }).count()).toBe(0);
  expect(await beyond(page)).toEqual([]);
  await shot(page, 'ordering-item-390');
  await page.goto(`${web.url}/setup/ordering`);
  await page.getByLabel('Gewünschte Sicherheit in %').waitFor();
  expect(await page.getByLabel('Gewünschte Sicherheit in %').isDisabled()).toBe(true);
  expect(await beyond(page)).toEqual([]);
});
