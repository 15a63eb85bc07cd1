import { afterAll, afterEach, beforeAll, describe, expect, it } from '@jest/globals';
import type { Page } from 'playwright-core';
import { deliveryLine, openSmallBook, type SmallBook } from '../book/book.js';
import {
  eventually,
  openBrowser,
  type PageOptions,
  startWebService,
  type TestBrowser,
  type WebService,
} from './harness/index.js';
import { errorAt, openAs, pick } from './setup-steps.js';

let browser: TestBrowser;
let web: WebService;
let book: SmallBook;

beforeAll(async () => {
  [browser, web] = await Promise.all([openBrowser(), startWebService()]);
  book = await openSmallBook(web.service, 'mill');
  await book.book.deliver(book.supplier, '2026-01-05', [
    deliveryLine(book.paste, book.store, 1, '80', { lotNumber: 'P-1' }),
    deliveryLine(book.etchant, book.store, 1, '24', { lotNumber: 'E-1' }),
    deliveryLine(book.bib, book.store, 1, '25'),
    deliveryLine(book.strip, book.store, 1, '10'),
    deliveryLine(book.adhesive, book.store, 1, '100', { lotNumber: 'A-1' }),
  ]);
});

afterEach(() => browser.closePages());

afterAll(async () => {
  await browser.close();
  await web.stop();
});

const open = (role: string, path: string, options: PageOptions = {}): Promise<Page> =>
  openAs({ browser, web }, role, path, options);

interface Saved {
  readonly version: number;
  readonly note: string | null;
  readonly lines: readonly { driver: string; dispensed: string; consumableName: string | null }[];
}

const savedTemplate = (id: string) => book.book.done<Saved>('GET', `/procedure-templates/${id}`);
const example = (page: Page) => page.getByRole('complementary', { name: 'Try it on an example' });
const usageRows = (page: Page) => example(page).getByRole('table').locator('tbody tr');
const group = (page: Page, name: string) => page.getByRole('region', { name, exact: true });

/** What the example says it would cost. */
async function cost(page: Page): Promise<string> {
  const figure = example(page).locator('dl > div').filter({ hasText: 'Material, about' });
  return (await figure.locator('dd').first().textContent()) ?? '';
}

describe('a new template', () => {
  it('is written by the keyboard, with an example that follows', async () => {
    const page = await open('dentist', '/setup/templates/new');
    const write = page.getByRole('button', { name: 'Write the template' });
    await page.getByLabel('Chair time').fill('an hour');
    await page.getByLabel('Layer thickness').fill('0');
    await write.click();
    expect(await errorAt(page.getByLabel('Name'))).toContain('Please fill');
    expect(await errorAt(page.getByLabel('Chair time'))).toContain('0 to 1440');
    expect(await errorAt(page.getByLabel('Layer thickness'))).toContain('more than 0');
    expect(await errorAt(page.getByLabel('Add something counted by'))).toContain('at least one');
    await page.getByLabel('Name').fill('Edge filling');
    await page.getByLabel('Chair time').fill('25');
    await page.getByLabel('Layer thickness').fill('2');
    await page.getByLabel('Add something counted by').selectOption('tooth');
    await page.getByRole('button', { name: 'Add a line', exact: true }).press('Enter');
    await pick(page, 'etch', 'Etchant gel');
    await page.keyboard.press('Tab');
    await page.keyboard.type('0.1');
    await eventually(() => usageRows(page).count(), 1);
    expect(await cost(page)).toBe('€0.50');
    await page.getByLabel('Add something counted by').selectOption('restoration');
    await page.getByRole('button', { name: 'Add a line', exact: true }).press('Enter');
    await write.click();
    const shades = group(page, 'Per restoration');
    expect(await errorAt(shades.getByRole('combobox'))).toContain('Please choose');
    await shades.getByRole('combobox').focus();
    await pick(page, 'shades', 'The chosen shades');
    await page.keyboard.press('Tab');
    await page.keyboard.type('0.05');
    await page.keyboard.press('Tab');
    await page.keyboard.type('0.07');
    await shades.getByText('More than comes out').waitFor();
    await page.keyboard.press('Control+A');
    await page.keyboard.type('0.03');
    await eventually(() => usageRows(page).count(), 2);
    expect(await cost(page)).toBe('€1.50');
    await write.click();
    await page.waitForURL(/\/setup\/templates\/[0-9a-f-]{36}$/);
    await page.getByRole('heading', { level: 1, name: 'Edge filling' }).waitFor();
    const saved = await savedTemplate(page.url().split('/').at(-1) ?? '');
    expect(saved.lines).toMatchObject([
      { driver: 'tooth', dispensed: '0.1', consumableName: 'Etchant gel' },
      { driver: 'restoration', dispensed: '0.05', consumableName: null },
    ]);
  });

  it('does not lose what was typed without asking', async () => {
    const page = await open('dentist', '/setup/templates/new');
    await page.getByLabel('Name').fill('Half a thought');
    const asked: string[] = [];
    page.on('dialog', (dialog) => {
      asked.push(dialog.message());
      void (asked.length === 1 ? dialog.dismiss() : dialog.accept());
    });
    await page.getByRole('link', { name: 'All templates' }).click();
    expect(await page.getByLabel('Name').inputValue()).toBe('Half a thought');
    await page.getByRole('link', { name: 'All templates' }).click();
    await page.waitForURL('**/setup/templates');
    expect(asked).toEqual(Array(2).fill('Your changes are not saved. Leave anyway?'));
  });
});

describe('changing a template', () => {
  it('compares, asks why, and writes a new version; the old one stays', async () => {
    const path = `/setup/templates/${book.template}`;
    const page = await open('dentist', path);
    await eventually(() => usageRows(page).count(), 5);
    const first = await cost(page);
    const tooth = group(page, 'Per tooth');
    const out = tooth.getByLabel('Out of the container: Etchant gel');
    await out.fill('0.08 mL');
    await tooth.getByText('Please write a number').waitFor();
    await out.fill('0.2');
    await tooth.getByRole('button', { name: 'When Etchant gel is used' }).click();
    await tooth.getByLabel('wear').check();
    await tooth.getByLabel('decay').check();
    await tooth.getByLabel('Used again when').check();
    await page.getByText('Etchant gel (Per tooth): out 0.08', { exact: false }).waitFor();
    await eventually(
      () => example(page).getByText('Before your changes').locator('..').textContent(),
      `Before your changes${first}`,
    );
    await page.getByText('+€0.60').waitFor();
    await page.getByRole('button', { name: 'Save as version 2' }).click();
    expect(await errorAt(page.getByLabel('What is different, and why'))).toContain('Please fill');
    expect((await savedTemplate(book.template)).version).toBe(1);
    await page.getByLabel('What is different, and why').fill('More gel on worn enamel.');
    await page.getByRole('button', { name: 'Save as version 2' }).click();
    const versions = page.getByRole('region', { name: 'Versions' });
    await versions.getByText('More gel on worn enamel.').waitFor();
    await versions.getByText('only for decay, wear', { exact: false }).waitFor();
    await page.getByText('Nothing is changed yet.').waitFor();
    expect(await savedTemplate(book.template)).toMatchObject({ version: 2 });
    await versions.getByRole('link', { name: 'Look at it: version 1' }).click();
    await page.waitForURL(`**${path}?version=1`);
    await page.reload();
    await page.getByText('The current one is version 2.', { exact: false }).waitFor();
    expect(await page.getByLabel('Chair time').count()).toBe(0);
    await page.getByRole('button', { name: 'To the current version' }).click();
    await page.getByLabel('Chair time').waitFor();
  });

  it('moves, adds and takes out lines by the keyboard, which keeps its place', async () => {
    const page = await open('dentist', `/setup/templates/${book.template}`);
    const visit = group(page, 'Once per visit');
    await visit.getByRole('button', { name: 'Add a line: Once per visit' }).press('Enter');
    await pick(page, 'strip', 'Clear matrix strip');
    const names = () =>
      visit
        .getByRole('combobox', { name: 'Consumable' })
        .evaluateAll((all) => all.map((field) => (field as unknown as { value: string }).value));
    await eventually(names, ['Patient bib', 'Clear matrix strip']);
    await visit.getByRole('button', { name: 'Move Clear matrix strip up' }).press('Enter');
    await eventually(names, ['Clear matrix strip', 'Patient bib']);
    const focused = () => page.evaluate(() => document.activeElement?.getAttribute('aria-label'));
    await eventually(focused, 'Move Clear matrix strip up');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Tab');
    await eventually(focused, 'Take Clear matrix strip out');
    await page.keyboard.press('Enter');
    await eventually(names, ['Patient bib']);
    await eventually(focused, 'Take Patient bib out');
    await page.keyboard.press('Enter');
    await page.getByText('Taken out: Patient bib (Once per visit)').waitFor();
    await page.getByRole('button', { name: 'Take the changes back' }).click();
    await eventually(names, ['Patient bib']);
  });

  it('says which doses are shared, what goes without anaesthetic, and how long assistants help', async () => {
    const page = await open('dentist', `/setup/templates/${book.capsuleTemplate}`);
    const attempt = group(page, 'Per attempt');
    await attempt.getByText('a single dose may serve several restorations').waitFor();
    await attempt.getByRole('button', { name: /^When Paste in capsules/ }).click();
    await attempt.getByLabel('A single dose of it').selectOption('is opened for each');
    await attempt.getByLabel('In a visit without anaesthetic').selectOption('left out');
    await page.getByLabel('Assistants (minutes)').fill('15');
    const visit = group(page, 'Once per visit');
    await visit.getByRole('button', { name: 'When Patient bib is used' }).click();
    // What the visit uses once has no part of a dose.
    expect(await visit.getByLabel('A single dose of it').count()).toBe(0);
    await page.getByText('Assistants 40 → 15 minutes').waitFor();
    await page
      .getByText('a single dose for each; left out without anaesthetic', { exact: false })
      .waitFor();
    await page.getByLabel('What is different, and why').fill('A capsule for each tooth.');
    await page.getByRole('button', { name: 'Save as version 2' }).click();
    await page.getByText('Version 2, written on', { exact: false }).waitFor();
    expect(await savedTemplate(book.capsuleTemplate)).toMatchObject({
      version: 2,
      assistantMinutes: 15,
      lines: [{}, {}, {}, {}, { sharesDose: false, anaesthetic: true }],
    });
  });

  it('says what the service says about a line', async () => {
    const page = await open('dentist', `/setup/templates/${book.template}`);
    const shades = group(page, 'Per restoration');
    await shades.getByRole('button', { name: 'When The chosen shades is used' }).click();
    await shades.getByLabel('Counted by').selectOption('visit');
    await group(page, 'Once per visit')
      .getByText('Shades are chosen for one restoration', { exact: false })
      .waitFor();
  });

  it('is renamed and retired', async () => {
    const page = await open('dentist', `/setup/templates/${book.capsuleTemplate}?rename=1`, {
      refusals: [409],
    });
    const form = page.getByRole('dialog');
    const save = form.getByRole('button', { name: 'Save' });
    await form.getByLabel('Name').fill('');
    await save.click();
    expect(await errorAt(form.getByLabel('Name'))).toContain('Please fill');
    await form.getByLabel('Name').fill('Front tooth composite');
    await save.click();
    await form.getByText('Is already in use').waitFor();
    await form.getByLabel('Name').fill('Capsule filling');
    await form.getByLabel('In use').uncheck();
    await save.click();
    await page.getByRole('heading', { level: 1, name: 'Capsule filling' }).waitFor();
    await page.goto(`${web.url}/setup/templates`);
    await page.getByRole('link', { name: 'Front tooth composite' }).waitFor();
    expect(await page.getByRole('link', { name: 'Capsule filling' }).count()).toBe(0);
    await page.getByLabel('Shown').selectOption('retired');
    await page.getByRole('link', { name: 'Capsule filling' }).waitFor();
  });
});
