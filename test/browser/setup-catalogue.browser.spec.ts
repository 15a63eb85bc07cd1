import { afterAll, afterEach, beforeAll, describe, expect, it } from '@jest/globals';
import type { Page } from 'playwright-core';
import { openSmallBook, type SmallBook } from '../book/book.js';
import {
  eventually,
  expectAccessible,
  expectAccessibleLooks,
  openBrowser,
  type PageOptions,
  startWebService,
  type TestBrowser,
  type WebService,
} from './harness/index.js';
import { dialogOf, errorAt, openAs } from './setup-steps.js';

let browser: TestBrowser;
let web: WebService;
let book: SmallBook;

beforeAll(async () => {
  [browser, web] = await Promise.all([openBrowser(), startWebService()]);
  book = await openSmallBook(web.service, 'mill');
});

afterEach(() => browser.closePages());

afterAll(async () => {
  await browser.close();
  await web.stop();
});

const open = (role: string, path: string, options: PageOptions = {}): Promise<Page> =>
  openAs({ browser, web }, role, path, options);

const save = (page: Page) => dialogOf(page).getByRole('button', { name: 'Save' }).click();

async function namesOf(path: string): Promise<string[]> {
  const page = await book.book.done<{ items: { name: string }[] }>('GET', `${path}?limit=500`);
  return page.items.map(({ name }) => name);
}

describe('consumables', () => {
  it('are found by the service, and the address keeps what was asked', async () => {
    const page = await open('manager', '/setup/consumables');
    const rows = page.getByRole('table').getByRole('link');
    await page.getByRole('link', { name: 'Etchant gel' }).waitFor();
    expect(await rows.count()).toBe(6);
    await page.getByLabel('Search').fill('paste');
    await page.getByLabel('Category').selectOption('composite');
    await page.waitForURL(/q=paste&.*category=composite|category=composite&.*q=paste/);
    await page.getByRole('link', { name: 'Etchant gel' }).waitFor({ state: 'detached' });
    await page.reload();
    await rows.first().waitFor();
    expect(await rows.allTextContents()).toEqual(['Paste', 'Paste in capsules']);
    await page.getByLabel('Shown').selectOption('retired');
    await page.getByText('Nothing matches').waitFor();
  });

  it('are sorted by the service, and the other way round by a second click', async () => {
    const page = await open('manager', '/setup/consumables');
    const first = page.getByRole('table').getByRole('link').first();
    await page.getByRole('button', { name: 'Name' }).click();
    await page.waitForURL('**sort=-name');
    await eventually(() => first.textContent(), 'Patient bib');
    expect(await page.getByRole('columnheader', { name: 'Name' }).getAttribute('aria-sort')).toBe(
      'descending',
    );
    await page.reload();
    await eventually(() => first.textContent(), 'Patient bib');
    await page.getByRole('button', { name: 'Name' }).click();
    await eventually(() => first.textContent().then((name) => name !== 'Patient bib'), true);
    expect(new URL(page.url()).search).toBe('');
  });

  it('are added by the keyboard; every wrong field says what is wrong, and nothing is kept', async () => {
    const page = await open('manager', '/setup/consumables');
    await page.getByRole('button', { name: 'Add a consumable' }).click();
    const form = dialogOf(page);
    const before = await namesOf('/consumables');
    await form.getByLabel('Order up to').fill('5');
    await form.getByLabel('May be used after opening for').fill('0');
    await form.getByLabel('Density').fill('heavy');
    await save(page);
    expect(await errorAt(form.getByLabel('Name'))).toContain('Please fill this in');
    expect(await errorAt(form.getByLabel('Category'))).toContain('Please fill this in');
    expect(await errorAt(form.getByLabel('May be used after opening for'))).toContain('1 to 1200');
    expect(await errorAt(form.getByLabel('Order when this much'))).toContain('at how much');
    expect(await errorAt(form.getByLabel('Density'))).toContain('Please write a number');
    await form.getByLabel('Order when this much').fill('6');
    await save(page);
    expect(await errorAt(form.getByLabel('Order up to'))).toContain('Must not be less');
    await expectAccessible(page);
    expect(await namesOf('/consumables')).toEqual(before);
    await form.getByLabel('Name').fill('Flow paste');
    await form.getByLabel('Name').press('Tab');
    await page.keyboard.type('compo');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    expect(await form.getByLabel('Category').inputValue()).toBe('composite');
    await form.getByLabel('Shade').fill('Dentine 3');
    await form.getByLabel('May be used after opening for').fill('9');
    await form.getByLabel('Order up to').fill('12,5');
    await form.getByLabel('Density').fill('2.1');
    await form.getByLabel('Density').press('Enter');
    await page.waitForURL(/\/setup\/consumables\/[0-9a-f-]{36}$/);
    await page.getByRole('heading', { level: 1, name: 'Flow paste' }).waitFor();
    await page.getByText('12.5').waitFor();
    await page.getByText('9 months').waitFor();
  });

  it('are changed, and the service’s word about a field stands beside it', async () => {
    const page = await open('manager', `/setup/consumables/${book.bib.id}?edit=1`, {
      refusals: [409],
    });
    const form = dialogOf(page);
    await form.getByLabel('Name').fill('Etchant gel');
    await save(page);
    await form.getByText('Is already in use').waitFor();
    await form.getByLabel('Name').fill('Patient bib, two-ply');
    await save(page);
    await page.getByRole('heading', { level: 1, name: 'Patient bib, two-ply' }).waitFor();
    await dialogOf(page).waitFor({ state: 'detached' });
    await page.waitForURL(`${web.url}/setup/consumables/${book.bib.id}`);
  });
});

describe('how a consumable is bought', () => {
  it('is written out in words, with the price of a unit', async () => {
    const page = await open('manager', `/setup/consumables/${book.capsule.id}`);
    await page.getByText('1 pack = 20 single doses of 0.25 g = 5 g').waitFor();
    await page.getByRole('button', { name: 'Add a way of buying' }).click();
    const form = dialogOf(page);
    await form.getByLabel('How it is used up').selectOption('by-piece');
    await form.getByLabel('Portions in a pack').fill('0');
    await form.getByLabel('List price').fill('cheap');
    await save(page);
    expect(await errorAt(form.getByLabel('What the pack is called'))).toContain('Please fill');
    expect(await errorAt(form.getByLabel('How it is used up'))).toContain('Only what is kept in');
    expect(await errorAt(form.getByLabel('Portions in a pack'))).toContain('1 to 100000');
    expect(await errorAt(form.getByLabel('In one portion'))).toContain('Please fill');
    expect(await errorAt(form.getByLabel('List price'))).toContain('Please write a number');
    expect(await namesOf(`/consumables/${book.capsule.id}/presentations`)).toEqual(['Pack']);
    await form.getByLabel('What the pack is called').fill('Two syringes');
    await form.getByLabel('How it is used up').selectOption('multi-use');
    await form.getByLabel('Containers in a pack').fill('2');
    await form.getByLabel('In one container').fill('3,5');
    await form.getByLabel('List price').fill('140');
    await form.getByText('1 pack = 2 containers of 3.5 g = 7 g').waitFor();
    await form.getByText('€20.00 per g', { exact: false }).waitFor();
    await form.getByLabel('Usual supplier').selectOption('Northgate Supply');
    await save(page);
    await page.getByRole('heading', { level: 3, name: 'Two syringes' }).waitFor();
    await expectAccessible(page);
  });

  it('stays as it is once it was delivered', async () => {
    await book.book.deliver(book.supplier, '2026-01-05', [
      {
        presentationId: book.strip.presentation,
        locationId: book.store,
        packs: 1,
        packPrice: '7',
      },
    ]);
    const path = `/setup/consumables/${book.strip.id}?pack=${book.strip.presentation}`;
    const page = await open('manager', path, { refusals: [409] });
    await dialogOf(page).getByLabel('In one portion').fill('2');
    await save(page);
    await page.getByRole('alert').getByText('What is in a pack stays').waitFor();
  });
});

describe('suppliers', () => {
  it('are added and changed', async () => {
    const page = await open('manager', '/setup/suppliers?new=1', { refusals: [409] });
    const form = dialogOf(page);
    await form.getByLabel('Address for orders').fill('no address');
    await save(page);
    expect(await errorAt(form.getByLabel('Name'))).toContain('Please fill this in');
    expect(await errorAt(form.getByLabel('Address for orders'))).toContain('does not look like');
    await form.getByLabel('Address for orders').fill('desk@quay.example');
    await form.getByLabel('Name').fill('Northgate Supply');
    await save(page);
    await form.getByText('Is already in use').waitFor();
    expect(await namesOf('/suppliers')).toEqual(['Northgate Supply']);
    await form.getByLabel('Name').fill('Quay Goods');
    await save(page);
    await page.getByRole('button', { name: 'Change Quay Goods' }).click();
    await dialogOf(page).getByLabel('In use').uncheck();
    await save(page);
    await page.getByText('Quay Goods is saved.').first().waitFor();
    await page.getByRole('button', { name: 'Change Quay Goods' }).waitFor({ state: 'detached' });
    await page.getByLabel('Shown').selectOption('retired');
    await page.waitForURL('**/suppliers?show=retired');
    await page.getByText('Quay Goods', { exact: true }).waitFor();
  });
});

describe('locations', () => {
  it('form a tree, and one hangs below the place it draws from', async () => {
    const page = await open('manager', '/setup/locations');
    await page.getByRole('button', { name: 'Add below: Room 1' }).click();
    const form = dialogOf(page);
    await save(page);
    expect(await errorAt(form.getByLabel('Name'))).toContain('Please fill this in');
    expect(await form.getByLabel('Draws from').inputValue()).toBe(book.room);
    await form.getByLabel('Name').fill('Drawer A');
    await form.getByLabel('What it is').selectOption('drawer');
    await save(page);
    const drawer = page.getByRole('listitem').filter({ hasText: 'Drawer A' }).last();
    await drawer.getByText('Drawer · draws from Room 1').waitFor();
    await page.getByRole('button', { name: 'Change Room 1' }).click();
    const offered = dialogOf(page).getByLabel('Draws from').getByRole('option');
    expect(await offered.allTextContents()).toEqual(['nowhere else', 'Room 2', 'Store']);
    await page.keyboard.press('Escape');
    await dialogOf(page).waitFor({ state: 'detached' });
    await page.waitForURL(`${web.url}/setup/locations`);
  });

  it('stay in use while something lies there', async () => {
    await book.book.deliver(book.supplier, '2026-01-06', [
      { presentationId: book.bib.presentation, locationId: book.store, packs: 1, packPrice: '9' },
    ]);
    const page = await open('manager', `/setup/locations?edit=${book.store}`, {
      refusals: [409],
    });
    await dialogOf(page).getByLabel('In use').uncheck();
    await save(page);
    await page.getByRole('alert').getByText('Things still lie here.').waitFor();
  });
});

describe('who may not change the catalogue', () => {
  it.each(['dentist', 'auditor', 'assistant'])(
    'the %s reads it and is offered nothing',
    async (role) => {
      const page = await open(role, `/setup/consumables/${book.paste.id}?edit=1`);
      await page.getByText('1 pack = 1 container of 4 g').waitFor();
      expect(await dialogOf(page).count()).toBe(0);
      expect(await page.locator('#content button:not(thead button)').count()).toBe(0);
      for (const path of [
        '/setup/consumables?new=1',
        '/setup/suppliers?new=1',
        '/setup/locations',
      ]) {
        await page.goto(`${web.url}${path}`);
        await page
          .locator('#content')
          .getByText('Paste', { exact: true })
          .or(page.getByText('Northgate Supply'))
          .or(page.getByText('Room 2', { exact: true }))
          .first()
          .waitFor();
        expect(await dialogOf(page).count()).toBe(0);
        expect(await page.locator('#content button:not(thead button)').count()).toBe(0);
      }
    },
  );
});

describe('looks', () => {
  it('are accessible in light and dark, wide and narrow', async () => {
    const page = await open('manager', '/setup');
    const screens = {
      consumables: '/setup/consumables',
      'consumables-new': '/setup/consumables?new=1',
      consumable: `/setup/consumables/${book.paste.id}`,
      'consumable-pack': `/setup/consumables/${book.paste.id}?pack=new`,
      suppliers: '/setup/suppliers',
      'suppliers-new': '/setup/suppliers?new=1',
      locations: '/setup/locations',
      'locations-new': '/setup/locations?new=1',
    };
    for (const [name, path] of Object.entries(screens)) {
      await page.goto(`${web.url}${path}`);
      await page.locator(path.includes('new') ? 'form' : '#content h1').waitFor();
      await expectAccessibleLooks(page, `setup-${name}`);
    }
  }, 300_000);

  it('speak German', async () => {
    const page = await open('manager', '/setup');
    await page.evaluate(() => localStorage.setItem('traybook.language', 'de'));
    await page.goto(`${web.url}/setup/consumables/${book.capsule.id}?pack=new`);
    await page.getByText('1 Packung = 20 Einzeldosen zu 0,25 g = 5 g').waitFor();
    await dialogOf(page).getByLabel('In einem Behälter').fill('x');
    await dialogOf(page).getByRole('button', { name: 'Speichern' }).click();
    await page.getByText('Bitte eine Zahl schreiben, z. B. 0,06').waitFor();
  });
});
