import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import type { Page } from 'playwright-core';
import { type Order, OrderBook } from '../purchasing/orders-book.js';
import { type MailBox, openMailBox, SetClock } from '../purchasing/post-boxes.js';
import {
  eventually,
  expectAccessible,
  expectAccessibleLooks,
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
let mail: MailBox;
let orders: OrderBook;

beforeAll(async () => {
  [browser, mail] = await Promise.all([openBrowser(), openMailBox()]);
  web = await startWebService({ clock, mail: { smtpUrl: mail.url } });
  orders = await OrderBook.open(web.service, 'mill');
});

afterEach(() => browser.closePages());

afterAll(async () => {
  await browser.close();
  await web.stop();
  await mail.close();
});

const open = (role: string, path: string, options: PageOptions = {}) =>
  openAs({ browser, web }, role, path, options);

/** The cells of a line of the order, as they are read. */
async function lineOf(page: Page, goods: string): Promise<string[]> {
  const row = page
    .getByRole('table', { name: 'Lines' })
    .getByRole('row')
    .filter({ hasText: goods });
  const cells = await row.getByRole('cell').allInnerTexts();
  return cells.slice(1).map((text) => text.trim());
}

async function choose(page: Page, label: string, typed: string, option: string): Promise<void> {
  await page.getByRole('combobox', { name: label }).click();
  await page.keyboard.type(typed);
  await page.getByRole('option', { name: option, exact: true }).click();
}

/** Where the keyboard is: the name of a field, or what a button says. */
const focused = (page: Page): Promise<string | null | undefined> =>
  page.evaluate(() => {
    const at = document.activeElement;
    return at?.getAttribute('name') ?? at?.textContent;
  });

// A test that is tried once more finds what the others left.
beforeEach(async () => {
  clock.at = new Date('2026-05-04T10:00:00Z');
  await orders.small.book.done('PUT', '/order-rules', { lateAfterDays: 2 });
});

describe('an order', () => {
  it('is begun by hand, approved and sent by e-mail', async () => {
    const page = await open('manager', '/ordering/orders');
    await page.getByRole('link', { name: 'New order' }).click();
    await page.waitForURL('**/ordering/orders/new');
    await page.getByRole('button', { name: 'Begin the order' }).click();
    expect(
      await errorAt(page.getByRole('combobox', { name: 'Who is it ordered from?' })),
    ).toContain('fill this in');
    await choose(page, 'Who is it ordered from?', 'North', 'Northgate Supply');
    await choose(page, 'Add goods', 'Body', 'Paste, Body 2 · Pack');
    await eventually(() => focused(page), 'lines[0].packs');
    await choose(page, 'Add goods', 'strip', 'Clear matrix strip · Pack');
    await eventually(() => focused(page), 'lines[1].packs');
    await page.getByRole('button', { name: 'Take out Clear matrix strip' }).press('Enter');
    await eventually(() => focused(page), 'lines[0].packs');
    await choose(page, 'Add goods', 'strip', 'Clear matrix strip · Pack');
    await page.getByLabel('Packs').first().fill('0');
    await page.getByRole('button', { name: 'Begin the order' }).click();
    expect(await errorAt(page.getByLabel('Packs').first())).toContain('from 1 to 100000');
    await page.getByLabel('Packs').first().fill('2');
    await expectAccessible(page);
    await shot(page, 'orders-new');
    await page.getByRole('button', { name: 'Begin the order' }).click();
    await page.getByRole('heading', { name: /^Order \d+$/ }).waitFor();
    await page.getByText('One line has no known price').waitFor();
    await page.getByLabel('Price of a pack').nth(1).fill('7,50');
    const approve = page.getByRole('button', { name: 'Approve', exact: true });
    // Nobody approves what is typed and not saved.
    await eventually(() => approve.isDisabled(), true);
    await page.getByRole('button', { name: 'Save the draft' }).click();
    await page.getByText('The draft is saved.').waitFor();
    await page.getByText('€151.50').first().waitFor();
    await shot(page, 'orders-draft');
    await approve.click();
    await page.getByRole('dialog').getByRole('button', { name: 'Approve' }).click();
    await page.getByText('Approved by mill.manager, not sent yet.').waitFor();
    // The keyboard stands on the next step, where the last one was.
    await eventually(() => focused(page), 'Send …');
    await page.keyboard.press('Enter');
    const dialog = page.getByRole('dialog');
    await eventually(
      () => dialog.getByLabel('E-mail address').inputValue(),
      'orders@northgate.example',
    );
    await expectAccessible(page);
    await shot(page, 'orders-send');
    await dialog.getByRole('button', { name: 'Send it' }).click();
    await page.getByText('To Northgate Supply, sent on 4 May 2026.').waitFor();
    expect(mail.mails.at(-1)?.attachments).toHaveLength(2);
    expect(await lineOf(page, 'Paste')).toEqual(['2', '0', '2', '€72.00', '€144.00']);
    const happened = page.getByRole('region', { name: 'What happened' });
    expect(await happened.getByRole('listitem').count()).toBe(4);
    await happened.getByText('By e-mail · to orders@northgate.example').waitFor();
  });

  it('is followed: what came, what will not, and where it is', async () => {
    const { paste, strip } = orders.small;
    const order = await orders.sent([orders.line(paste, 3), orders.line(strip, 2, '7')]);
    const [first] = order.lines;
    if (!first) throw new Error('The order lost its lines');
    await orders.deliver('2026-05-04', [[first, 1]]);
    clock.at = new Date('2026-05-12T10:00:00Z');
    const page = await open('manager', '/today');
    const late = page.getByRole('region', { name: 'Ordered and late' });
    await late.getByText('Paste, Body 2 and one more line did not come.').first().waitFor();
    await late
      .getByRole('link', { name: `Open the order: Order ${order.number}, Northgate Supply` })
      .click();
    await page.waitForURL(`**/ordering/orders/${order.id}`);
    await page.getByRole('heading', { name: `Order ${order.number}` }).waitFor();
    await page.goto(`${web.url}/ordering/orders?late=1`);
    const row = page.getByRole('row').filter({ hasText: `Order ${order.number}` });
    await row.getByText('6 days late').waitFor();
    await expectAccessible(page);
    await shot(page, 'orders-list');
    await row.getByRole('link', { name: `Order ${order.number}` }).click();
    await page.getByRole('heading', { name: `Order ${order.number}` }).waitFor();
    expect(await lineOf(page, 'Paste')).toEqual(['3', '1', '2', '€72.00', '€216.00']);
    await page.getByRole('link', { name: '1 pack on 4 May 2026 at €72.00' }).waitFor();
    await expectAccessibleLooks(page, 'orders-late');
    await page.getByRole('button', { name: 'Chase …' }).click();
    await page.getByRole('dialog').getByRole('button', { name: 'Send the question' }).click();
    await page.getByText('The supplier was asked.').waitFor();
    expect(mail.mails.at(-1)?.text).toContain('- 2 × Pack, Paste, Body 2');
    await page.getByRole('button', { name: 'Supplier answered …' }).click();
    const dialog = page.getByRole('dialog');
    const missing = dialog.getByLabel('Paste, Body 2, of 2 packs');
    await missing.fill('3');
    await dialog.getByRole('button', { name: 'Save the answer' }).click();
    expect(await errorAt(missing)).toContain('from 0 to 2');
    await missing.fill('2');
    await dialog.getByLabel('New day').fill('2026-05-15');
    await expectAccessible(page);
    await shot(page, 'orders-answer');
    await dialog.getByRole('button', { name: 'Save the answer' }).click();
    await page.getByText('The answer is noted.').waitFor();
    await eventually(() => lineOf(page, 'Paste'), ['3', '1', '0', '€72.00', '€216.00']);
    await page.getByText('15 May 2026').first().waitFor();
    await page.getByRole('button', { name: 'Close …' }).click();
    await page.getByRole('dialog').getByRole('button', { name: 'Close the order' }).click();
    await page.getByText('Every line came or will not come.').waitFor();
  });

  it('stays within what the practice allows', async () => {
    const owner = await open('owner', '/ordering/orders?do=rules');
    const dialog = owner.getByRole('dialog');
    await dialog.getByLabel('May be approved up to').fill('100');
    await dialog.getByLabel('Deliver to').fill('Mill Lane 3, 12345 Millbrook');
    await expectAccessible(owner);
    await shot(owner, 'orders-rules');
    await dialog.getByRole('button', { name: 'Save' }).click();
    await owner.getByText('Budget and limits are saved.').waitFor();
    const { small } = orders;
    const draft = await orders.draft([orders.line(small.paste, 3)]);
    const page = await open('manager', `/ordering/orders/${draft.id}`);
    await page.getByText('The order is €116.00 above what may be approved.').waitFor();
    expect(await page.getByRole('button', { name: 'Approve', exact: true }).isDisabled()).toBe(
      true,
    );
    await owner.goto(`${web.url}/ordering/orders/${draft.id}?do=approve`);
    await owner.getByRole('dialog').getByRole('button', { name: 'Approve' }).click();
    await owner.getByText('above the limit €116.00').waitFor();
  });

  it('is not overwritten by somebody who saw an older one', async () => {
    const { bib, supplier, book } = orders.small;
    const draft = await orders.draft([orders.line(bib, 1, '9')]);
    const page = await open('manager', `/ordering/orders/${draft.id}`, { refusals: [409] });
    await page.getByLabel('Packs').fill('4');
    const lines = [{ ...orders.line(bib, 2, '9'), id: draft.lines[0]?.id }];
    const body = { version: draft.version, supplierId: supplier, lines };
    await book.done<Order>('PUT', `/orders/${draft.id}`, body);
    await page.getByRole('button', { name: 'Save the draft' }).click();
    await page.getByText('Somebody changed this order after you opened it.').waitFor();
    await page.getByRole('button', { name: 'Load it again' }).click();
    await eventually(() => page.getByLabel('Packs').inputValue(), '2');
  });

  it('reads in German on a telephone, and on paper', async () => {
    const { paste, strip } = orders.small;
    const order = await orders.sent([orders.line(paste, 1), orders.line(strip, 2, '7')]);
    const page = await open('auditor', '/ordering/orders', {
      ...{ width: 390, height: 844, colorScheme: 'dark' as const },
    });
    await page.evaluate(() => localStorage.setItem('traybook.language', 'de'));
    await page.goto(`${web.url}/ordering/orders/${order.id}`);
    await page.getByRole('heading', { name: `Bestellung ${order.number}` }).waitFor();
    await page.getByText('bestellt am 04.05.2026').waitFor();
    expect(await page.getByRole('button', { name: 'Nachfragen …' }).count()).toBe(0);
    await page.waitForLoadState('networkidle');
    await expectAccessible(page);
    const wide = () =>
      page.evaluate(() => document.documentElement.scrollWidth > window.innerWidth + 1);
    expect(await wide()).toBe(false);
    await shot(page, 'orders-phone');
    await page.goto(`${web.url}/ordering/orders`);
    await page.getByRole('link', { name: `Bestellung ${order.number}` }).waitFor();
    expect(await wide()).toBe(false);
    await shot(page, 'orders-phone-list');
  });
});
