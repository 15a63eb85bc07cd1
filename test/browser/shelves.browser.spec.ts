import { afterAll, afterEach, beforeAll, describe, expect, it } from '@jest/globals';
import type { SmallBook } from '../book/book.js';
import {
  eventually,
  expectAccessible,
  expectAccessibleLooks,
  FixedClock,
  openBrowser,
  openBusyBook,
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

async function open(name: string, path: string, options = {}) {
  const page = await browser.open(options);
  await signIn(page, web.url, `mill.${name}`, path);
  await page.locator('#content h1').waitFor();
  return page;
}

describe('the shelves', () => {
  it('show by consumable what is usable, what is not, how long, and the level', async () => {
    const page = await open('manager', '/shelves');
    const table = page.getByRole('table', { name: 'Stock by consumable' });
    const row = (name: string) => table.getByRole('row').filter({ hasText: name });
    expect(await row('Etchant gel').textContent()).toMatch(
      /Etchant geletchant0\u00a0mL4\.8\u00a0mL–No order point0\.08\u00a0mL used, not in the book/,
    );
    expect(await row('Clear matrix strip').textContent()).toMatch(/Low: order at 200\u00a0pieces/);
    expect(await row('Paste in capsules').textContent()).toMatch(/5 May 20261 day left/);
    await row('Paste, Body 2').getByRole('link').click();
    await page.getByRole('heading', { level: 1, name: 'Paste, Body 2' }).waitFor();
    const lots = page.getByRole('table', { name: 'Lots and containers of this consumable' });
    expect(await lots.getByRole('row').last().textContent()).toMatch(
      /P-7received 2 Feb 2026Room 1Recalled1 sealed30 Jun 2027/,
    );
    const owed = page.getByRole('region', { name: 'Used, but not in the book' });
    expect(await owed.getByRole('listitem').textContent()).toMatch(/Visit of 4 May 2026/);
    await page.getByRole('link', { name: '← All shelves' }).click();
    await table.waitFor();
  });

  it('keep search, category, location, shade and sort in the address', async () => {
    const page = await open('manager', '/shelves');
    const names = () => page.locator('tbody a').allTextContents();
    await page.getByLabel('Name, shade, size or grit').fill('capsules');
    await page.waitForURL('**/shelves?q=capsules');
    await eventually(names, ['Paste in capsules, Enamel light']);
    await page.reload();
    await eventually(names, ['Paste in capsules, Enamel light']);
    await page.goto(`${web.url}/shelves?shade=Body+2`);
    await eventually(names, ['Paste, Body 2']);
    await page.getByRole('link', { name: 'Only shade Body 2' }).click();
    await page.waitForURL('**/shelves');
    await page.getByLabel('Location').selectOption('Room 1');
    await page.waitForURL('**/shelves?locationId=**');
    const [adhesive, strip, paste] = ['Adhesive', 'Clear matrix strip', 'Paste, Body 2'];
    const capsules = 'Paste in capsules, Enamel light';
    await eventually(names, [adhesive, strip, paste, capsules]);
    await page.getByRole('button', { name: 'Value' }).click();
    await page.waitForURL('**sort=value**');
    await eventually(names, [capsules, adhesive, paste, strip]);
    await page.goto(`${web.url}/shelves?sort=made+up&locationId=nowhere&q=nothing+like+it`);
    await page.getByText('Nothing matches').waitFor();
  });

  it('open a holding at the side, over what it is of, and close it with Escape', async () => {
    const page = await open('manager', `/shelves?consumableId=${book.etchant.id}`);
    await page.getByRole('link', { name: 'More about lot E-1 in Store' }).click();
    const sheet = page.getByRole('dialog', { name: 'Etchant gel' });
    await sheet.getByText('30 Apr 2026').first().waitFor();
    await page.reload();
    await sheet.getByRole('link', { name: 'Write off' }).waitFor();
    await page.keyboard.press('Escape');
    await sheet.waitFor({ state: 'hidden' });
    expect(new URL(page.url()).search).toBe(`?consumableId=${book.etchant.id}`);
  });

  it('say so when there is no such thing, or nothing is left of it', async () => {
    const nobody = '00000000-0000-4000-8000-000000000000';
    const page = await open('manager', `/shelves`);
    await page.goto(`${web.url}/shelves?consumableId=${nobody}`);
    await page.getByText('There is no such consumable').waitFor();
    await page.goto(`${web.url}/shelves?holdingId=${nobody}&do=move`);
    await page.getByRole('dialog', { name: 'Nothing of this is left here' }).waitFor();
  });

  it('lead from a lot to the balance and movements of its delivery line', async () => {
    const page = await open('auditor', `/shelves?consumableId=${book.capsule.id}`);
    await page.getByRole('link', { name: 'More about lot K-1 in Room 1' }).click();
    await page.getByRole('link', { name: 'Balance and movements of this delivery line' }).click();
    const panel = page.getByRole('region', { name: 'One delivery line' });
    expect(await panel.textContent()).toMatch(/It balances/);
    expect(await panel.getByLabel('Balance of quantity').textContent()).toMatch(
      /Received5\u00a0g=On hand5\u00a0g\+Used0\u00a0g/,
    );
    await panel.getByRole('link', { name: 'The delivery it came with' }).click();
    await page.getByRole('heading', { level: 1, name: 'Delivery of 12 Jan 2026' }).waitFor();
  });
});

describe('who may do what', () => {
  it('lets the auditor look and nothing else', async () => {
    const page = await open('auditor', `/shelves?consumableId=${book.etchant.id}`);
    await page.getByRole('link', { name: 'More about lot E-1 in Store' }).click();
    await page.getByRole('link', { name: 'Movements of this lot' }).waitFor();
    expect(await page.getByText('What to do with it').count()).toBe(0);
    for (const name of ['Write off', 'Book a delivery', 'Count', 'Move']) {
      expect(await page.getByRole('link', { name, exact: true }).count()).toBe(0);
    }
    await page.goto(`${web.url}/shelves/movements`);
    await page.getByRole('table', { name: 'Movements' }).waitFor();
    expect(await page.getByRole('link', { name: /Reverse/ }).count()).toBe(0);
    await page.goto(`${web.url}/shelves/deliveries/new`);
    await page.getByText('Your role may not open this screen.').waitFor();
  });

  it('lets the assistant handle, but not receive, send back or hold', async () => {
    const page = await open('assistant', `/shelves?consumableId=${book.capsule.id}`);
    await page.getByRole('link', { name: 'More about lot K-1 in Room 1' }).click();
    const sheet = page.getByRole('dialog', { name: 'Paste in capsules, Enamel light' });
    const ways = sheet.getByRole('listitem').getByRole('link');
    await ways.first().waitFor();
    expect(await ways.locator('strong').allTextContents()).toEqual([
      ...['Move', 'Write off', 'Count'],
    ]);
    await page.goto(`${page.url()}&do=return`);
    await page.getByText('This cannot be done with it now.').waitFor();
    await page.goto(`${web.url}/shelves`);
    await page.getByRole('table').waitFor();
    expect(await page.getByRole('link', { name: 'Book a delivery' }).count()).toBe(0);
  });
});

describe('for everybody', () => {
  it('is accessible', async () => {
    const lots = `/shelves?consumableId=${book.etchant.id}`;
    const page = await open('manager', '/shelves');
    for (const [name, path, seen] of [
      ['overview', '/shelves', 'Stock by consumable'],
      ['consumable', lots, 'Lots and containers of this consumable'],
      ['count', `/shelves?do=count&locationId=${book.room}`, 'What the book expects'],
      ['movements', '/shelves/movements', 'Movements'],
      ['deliveries', '/shelves/deliveries', 'Deliveries'],
    ] as const) {
      await page.goto(`${web.url}${path}`);
      await page.getByRole('table', { name: seen }).waitFor();
      await expectAccessibleLooks(page, `shelves-${name}`);
    }
    await page.goto(`${web.url}${lots}`);
    await page.getByRole('link', { name: 'Write off' }).click();
    await page.getByRole('dialog').locator('form').waitFor();
    await expectAccessible(page);
    await page.getByRole('link', { name: '← Other actions' }).click();
    await page.getByRole('dialog').getByText('What to do with it').waitFor();
    await expectAccessible(page);
  });

  it('speaks German', async () => {
    const page = await open('manager', '/shelves');
    await page.getByLabel('Language').selectOption('de');
    await page.getByRole('heading', { level: 1, name: 'Regale' }).waitFor();
    const row = page.getByRole('row').filter({ hasText: 'Etchant gel' });
    expect(await row.textContent()).toMatch(/4,8\u00a0ml.*0,08\u00a0ml verbraucht, nicht gebucht/);
    await page.goto(`${web.url}/shelves/movements?account=visit`);
    await page.getByText('Verbraucht').first().waitFor();
    await page.goto(`${web.url}/shelves/deliveries`);
    await page.getByText('Im Buch').first().waitFor();
    await page.goto(`${web.url}/shelves/deliveries/new`);
    await page.getByRole('button', { name: 'Lieferung buchen' }).waitFor();
  });
});
