import { afterAll, afterEach, beforeAll, describe, expect, it } from '@jest/globals';
import type { Page } from 'playwright-core';
import { deliveryLine, openSmallBook, type SmallBook, visitBody } from '../book/book.js';
import {
  eventually,
  expectAccessibleLooks,
  openBrowser,
  type PageOptions,
  startWebService,
  type TestBrowser,
  type WebService,
} from './harness/index.js';
import { openAs } from './setup-steps.js';

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

const example = (page: Page) => page.getByRole('complementary', { name: 'Try it on an example' });
const usageRows = (page: Page) => example(page).getByRole('table').locator('tbody tr');

describe('the example', () => {
  it('is in the address: teeth, surfaces, shades, people and room', async () => {
    const page = await open('dentist', `/setup/templates/${book.template}`);
    await page.getByRole('button', { name: 'Another example' }).click();
    const panel = example(page);
    await panel.getByLabel('Tooth', { exact: true }).selectOption('36');
    await panel.getByRole('button', { name: 'O, occlusal' }).click();
    await panel.getByLabel('Attempts').selectOption('2');
    await panel.getByText('retake 1', { exact: false }).first().waitFor();
    await panel.getByRole('button', { name: 'Add another tooth' }).click();
    await panel.getByLabel('If it were recorded today in').selectOption('Room 1');
    await panel.getByText('of it for retakes').waitFor();
    const search = new URL(page.url()).searchParams;
    expect(search.get('teeth')).toBe('36.MO.II.medium.decay.2~37.MO.II.medium.decay.2');
    expect(search.get('room')).toBe(book.room);
    await page.reload();
    await panel.getByText('of it for retakes').waitFor();
    expect(await panel.getByRole('button', { name: 'D, distal' }).count()).toBe(2);
    await panel.getByRole('button', { name: /^Take Paste, Body 2 out/ }).click();
    await panel.getByText('The template asks for shades.', { exact: false }).waitFor();
  });

  it('begins with the case in which the template was used last', async () => {
    await book.book.done('POST', '/visits', visitBody(book));
    const page = await open('dentist', `/setup/templates/${book.template}`);
    await example(page).getByText('As in the visit that used it last.').waitFor();
    await example(page).getByText('Tooth 21 M').waitFor();
  });

  it('shows no cost to whom costs are closed, and no way to change', async () => {
    const page = await open('assistant', `/setup/templates/${book.template}`);
    await eventually(() => usageRows(page).count(), 5);
    expect(await page.getByText('€').count()).toBe(0);
    expect(await page.getByRole('button', { name: /Save|Rename|Add|Move/ }).count()).toBe(0);
    expect(await page.getByLabel('Chair time').count()).toBe(0);
    await page.goto(`${web.url}/setup/templates`);
    await page.getByRole('link', { name: 'Front tooth composite' }).waitFor();
    expect(await page.getByRole('link', { name: 'Write a template' }).count()).toBe(0);
  });
});

describe('looks', () => {
  beforeAll(async () => {
    const path = `/procedure-templates/${book.template}`;
    const { lines } = await book.book.done<{ lines: Record<string, unknown>[] }>('GET', path);
    const kept = lines.map(({ consumableId, driver, placed, dispensed }) => {
      return { consumableId, driver, placed, dispensed };
    });
    const version = { minutes: 45, note: 'It took longer.', lines: kept };
    await book.book.done('POST', `${path}/versions`, version);
  });

  it('are accessible in light and dark, wide and narrow', async () => {
    const page = await open('dentist', '/setup');
    const template = `/setup/templates/${book.template}`;
    const screens = {
      templates: '/setup/templates',
      'template-new': '/setup/templates/new',
      template: `${template}?setting=1`,
      'template-old': `${template}?version=1`,
      'template-rename': `${template}?rename=1`,
    };
    for (const [name, path] of Object.entries(screens)) {
      await page.goto(`${web.url}${path}`);
      await page.locator('#content h1').waitFor();
      await expectAccessibleLooks(page, `setup-${name}`);
    }
    await page.goto(`${web.url}${template}`);
    await page.getByLabel('Out of the container: Adhesive').fill('');
    await page.getByRole('button', { name: 'When Adhesive is used' }).click();
    await page.getByRole('button', { name: /^Save as version/ }).click();
    await page.getByText('Please fill this in').first().waitFor();
    await expectAccessibleLooks(page, 'setup-template-wrong');
  }, 300_000);
});
