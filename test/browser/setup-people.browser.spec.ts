import { afterAll, afterEach, beforeAll, describe, expect, it } from '@jest/globals';
import type { Page } from 'playwright-core';
import { openSmallBook, type SmallBook } from '../book/book.js';
import { PASSWORD } from '../http/service.js';
import {
  expectAccessible,
  expectAccessibleLooks,
  openBrowser,
  type PageOptions,
  signIn,
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

const press = (page: Page, name: string) => dialogOf(page).getByRole('button', { name }).click();

async function peopleNow(): Promise<string[]> {
  const page = await book.book.done<{ items: { signInName: string }[] }>('GET', '/people');
  return page.items.map(({ signInName }) => signInName).sort();
}

describe('people', () => {
  it('are added, with every wrong field named, and can sign in', async () => {
    const page = await open('owner', '/setup/people?new=1', { refusals: [400, 409] });
    const before = await peopleNow();
    const form = dialogOf(page);
    const password = form.getByLabel('Password', { exact: true });
    await password.fill('short');
    await press(page, 'Save');
    expect(await errorAt(form.getByLabel('Name', { exact: true }))).toContain('Please fill');
    expect(await errorAt(form.getByLabel('Sign-in name'))).toContain('Please fill');
    await form.getByText('Must be at least 10 characters').waitFor();
    await form.getByLabel('Name', { exact: true }).fill('Jona Felder');
    await form.getByLabel('Sign-in name').fill('two words');
    await password.fill(PASSWORD);
    await press(page, 'Save');
    await form.getByText('Must be 2 to 120 letters', { exact: false }).waitFor();
    await form.getByLabel('Sign-in name').fill('mill.manager');
    await press(page, 'Save');
    await form.getByText('Is taken; choose another').waitFor();
    expect(await peopleNow()).toEqual(before);
    await form.getByLabel('Sign-in name').fill('jona');
    await form.getByLabel('Role').selectOption('dentist');
    await press(page, 'Save');
    await page.getByRole('cell', { name: 'Jona Felder', exact: true }).waitFor();
    const other = await browser.open();
    await signIn(other, web.url, 'jona');
    expect(new URL(other.url()).pathname).toBe('/costs');
  });

  it('get another role, another password, and are locked out', async () => {
    const page = await open('owner', '/setup/people');
    await page.getByRole('button', { name: 'Change mill.assistant' }).click();
    const form = dialogOf(page);
    await form.getByLabel('Name').fill('');
    await press(page, 'Save');
    expect(await errorAt(form.getByLabel('Name'))).toContain('Please fill');
    await form.getByLabel('Name').fill('Mara Lindt');
    await form.getByLabel('Role').selectOption('manager');
    await press(page, 'Save');
    await page.getByRole('button', { name: 'New password for Mara Lindt' }).click();
    await dialogOf(page).getByLabel('New password', { exact: true }).fill('mill.assistant');
    await press(page, 'Set the password');
    await dialogOf(page).getByText('Must differ from the sign-in name').waitFor();
    await dialogOf(page).getByLabel('New password', { exact: true }).fill('quite another phrase');
    await press(page, 'Set the password');
    await page.getByText('Mara Lindt has a new password.').waitFor();
    await page.getByRole('button', { name: 'Change Mara Lindt' }).click();
    await dialogOf(page).getByLabel('May sign in').uncheck();
    await press(page, 'Save');
    const row = page.getByRole('row', { name: /Mara Lindt/ });
    await row.getByText('Locked out').waitFor();
    await row.getByText('Manager').waitFor();
  });

  it('keep their last owner', async () => {
    const { id } = book.book.practice.people.owner;
    const page = await open('owner', `/setup/people?edit=${id}`, { refusals: [409] });
    await dialogOf(page).getByLabel('Role').selectOption('manager');
    await press(page, 'Save');
    await page.getByRole('alert').getByText('This is the only owner.').waitFor();
    await dialogOf(page).getByLabel('Role').selectOption('owner');
    await dialogOf(page).getByLabel('May sign in').uncheck();
    await press(page, 'Save');
    await page.getByRole('alert').getByText('This is the only owner.').waitFor();
  });

  it('see what each role may do, as the service decides it', async () => {
    const page = await open('owner', '/setup/people');
    const row = page.getByRole('row', { name: /Record visits/ });
    await row.waitFor();
    const answers = await row.getByRole('cell').allTextContents();
    expect(answers.map((each) => each.replace('–', ''))).toEqual([
      'yes',
      'yes',
      'yes',
      'no',
      'yes',
    ]);
  });
});

describe('the settings of the practice', () => {
  it('are changed, and wrong ones are not kept', async () => {
    const page = await open('owner', '/setup/practice');
    await page.getByLabel('Name of the practice').fill(' ');
    await page.getByLabel('Warn before expiry').fill('soon');
    const save = page.getByRole('button', { name: 'Save the settings' });
    await save.click();
    expect(await errorAt(page.getByLabel('Name of the practice'))).toContain('Please fill');
    expect(await errorAt(page.getByLabel('Warn before expiry'))).toContain('0 to 3650');
    expect((await book.book.done('GET', '/practice')).name).toBe('mill practice');
    await page.getByLabel('Name of the practice').fill('Practice at the Old Mill');
    await page.getByLabel('Warn before expiry').fill('45');
    await page.getByLabel('Shared').selectOption('surfaces');
    const chosen = page.locator('table [data-chosen]');
    expect(await chosen.allTextContents()).toEqual(['By number of surfaces', '€4.50', '€1.50']);
    await page.getByLabel('How teeth are written').selectOption('universal');
    const zone = page.getByRole('combobox', { name: 'Time zone' });
    await zone.fill('Vien');
    await page.getByRole('option', { name: 'Europe/Vienna' }).click();
    await save.click();
    await page.getByText('The settings are saved.').waitFor();
    await page.getByText('Practice at the Old Mill').waitFor();
    expect(await book.book.done('GET', '/practice')).toMatchObject({
      timeZone: 'Europe/Vienna',
      costShareKey: 'surfaces',
      toothNotation: 'universal',
      expiryWarningDays: 45,
    });
  });
});

describe('access tokens', () => {
  it('show their secret once, work, and are revoked', async () => {
    const page = await open('manager', '/setup/tokens');
    await page.getByText('No token yet').waitFor();
    await page.getByRole('button', { name: 'Make a token' }).click();
    await dialogOf(page).getByLabel('Last day').fill('2020-01-01');
    await press(page, 'Make a token');
    expect(await errorAt(dialogOf(page).getByLabel('What it is for'))).toContain('Please fill');
    expect(await errorAt(dialogOf(page).getByLabel('Last day'))).toContain('in the past');
    await dialogOf(page).getByLabel('Last day').fill('');
    await dialogOf(page).getByLabel('What it is for').fill('Label printer');
    await press(page, 'Make a token');
    await page.getByText('It is shown this once').waitFor();
    await expectAccessible(page);
    const token = (await dialogOf(page).locator('code').textContent()) ?? '';
    const ask = () => web.service.send('GET', '/api/session', { token });
    expect((await ask()).status).toBe(200);
    await press(page, 'I have copied it');
    await page.getByRole('cell', { name: 'Label printer', exact: true }).waitFor();
    await page.reload();
    await page.getByRole('button', { name: 'Revoke Label printer' }).click();
    await expectAccessible(page);
    await press(page, 'Revoke');
    await page.getByRole('cell', { name: 'Revoked' }).waitFor();
    expect((await ask()).status).toBe(401);
  });
});

describe('the audit trail', () => {
  it('tells the auditor who changed what, narrowed by the address', async () => {
    await book.book.done('PATCH', `/suppliers/${book.supplier}`, { email: 'desk@gate.example' });
    const page = await open('auditor', '/setup/audit');
    await page.getByLabel('About').selectOption('supplier');
    await page.waitForURL('**/setup/audit?kind=supplier');
    const row = page.getByRole('row').filter({ hasText: 'Supplier changed' });
    await row.getByText('none → desk@gate.example').waitFor();
    await row.getByRole('button', { name: /^Only this/ }).click();
    await page.waitForURL(`**/setup/audit?kind=supplier&subject=${book.supplier}`);
    await page.reload();
    await page.getByText('Narrowed to one thing').waitFor();
    expect(await page.getByRole('row').count()).toBe(3);
    await page.getByRole('button', { name: 'Show all again' }).click();
    await page.waitForURL('**/setup/audit?kind=supplier');
    await page.getByRole('button', { name: 'mill owner' }).first().click();
    await page.waitForURL('**/setup/audit?kind=supplier&person=**');
    await page.getByText('Narrowed to what mill owner did').waitFor();
  });
});

describe('who may not', () => {
  const CLOSED = {
    manager: ['/setup/people', '/setup/practice', '/setup/audit', '/setup/templates/new'],
    dentist: ['/setup/people', '/setup/practice', '/setup/audit'],
    auditor: ['/setup/people', '/setup/practice', '/setup/templates/new'],
    assistant: ['/setup/people', '/setup/practice', '/setup/audit', '/setup/templates/new'],
  };

  it.each(Object.entries(CLOSED))('the %s does not see these screens', async (role, paths) => {
    await book.book.done('PATCH', `/people/${book.book.practice.people.assistant.id}`, {
      active: true,
      role: 'assistant',
      password: PASSWORD,
    });
    const page = await open(role, '/setup/consumables');
    const links = page.getByRole('navigation', { name: 'Set-up' }).getByRole('link');
    const shown = await links.evaluateAll((all) => all.map((link) => link.getAttribute('href')));
    for (const path of paths) {
      expect(shown).not.toContain(path);
      await page.goto(`${web.url}${path}`);
      await page.getByText('Your role may not open this screen.').waitFor();
    }
  });
});

describe('looks', () => {
  it('are accessible in light and dark, wide and narrow', async () => {
    const { id } = book.book.practice.people.dentist;
    const screens = {
      people: '/setup/people',
      'people-new': '/setup/people?new=1',
      'people-edit': `/setup/people?edit=${id}`,
      'people-password': `/setup/people?password=${id}`,
      practice: '/setup/practice',
      tokens: '/setup/tokens',
      'tokens-new': '/setup/tokens?new=1',
      audit: '/setup/audit',
    };
    const page = await open('owner', '/setup');
    for (const [name, path] of Object.entries(screens)) {
      await page.goto(`${web.url}${path}`);
      await page.locator(path.includes('?') ? 'form' : '#content h1').waitFor();
      await expectAccessibleLooks(page, `setup-${name}`);
    }
  }, 300_000);
});
