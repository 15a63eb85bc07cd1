import { afterAll, afterEach, beforeAll, describe, expect, it } from '@jest/globals';
import type { Page } from 'playwright-core';
import type { SmallBook } from '../book/book.js';
import {
  eventually,
  expectAccessibleLooks,
  FixedClock,
  openBrowser,
  signIn,
  startWebService,
  type TestBrowser,
  TODAY,
  type WebService,
} from './harness/index.js';
import { openReportsBook } from './reports-book.js';

/** Ten visits are recorded first, which takes a slow machine a while. */
const PATIENCE = 180_000;

let browser: TestBrowser;
let web: WebService;
let s: SmallBook;

beforeAll(async () => {
  [browser, web] = await Promise.all([
    openBrowser(),
    startWebService({ clock: new FixedClock(TODAY) }),
  ]);
  s = await openReportsBook(web.service, 'ford');
}, PATIENCE);

afterEach(() => browser.closePages());

afterAll(async () => {
  await browser.close();
  await web.stop();
});

const SAYS = 'The template says 0.06\u00a0g, the last 20 used 0.084\u00a0g.';
const NEXT = 'The next version would say 0.084\u00a0g.';

async function open(role: string, more = '', options = {}): Promise<Page> {
  const page = await browser.open(options);
  await signIn(page, web.url, `ford.${role}`, `/costs/templates?templateId=${s.template}${more}`);
  return page;
}

const versionNow = async () =>
  (await s.book.done<{ latestVersion: number }>('GET', `/procedure-templates/${s.template}`))
    .latestVersion;

describe('a template against reality', () => {
  it('says in a sentence what the template says and what was used', async () => {
    const page = await open('manager');
    const said = page.getByRole('list', { name: 'What the template says, and what was used' });
    const paste = said.getByRole('listitem').filter({ hasText: 'The chosen shades' });
    await paste.getByText(SAYS).waitFor();
    await paste.getByText(NEXT).waitFor();
    // A manager reads what it costs; templates are changed by others.
    await page.getByText('Whoever may change templates can make a version of it here.').waitFor();
    expect(await page.getByRole('button', { name: 'Make version 2' }).count()).toBe(0);
  });

  it('shows what would be different', async () => {
    const page = await open('dentist', '&do=version');
    const dialog = page.getByRole('dialog', { name: 'Version 2 of Front tooth composite' });
    await dialog.getByRole('table', { name: 'What would be different' }).waitFor();
    await expectAccessibleLooks(page, 'suggestion-dialog');
    await page.keyboard.press('Escape');
    await page.waitForURL((address) => !address.search.includes('do='));
    await dialog.waitFor({ state: 'hidden' });
    expect(await versionNow()).toBe(1);
    await expectAccessibleLooks(page, 'suggestion');
  });

  it('speaks German', async () => {
    const page = await open('dentist');
    await page.getByLabel('Language').selectOption('de');
    const sentence = 'Die Vorlage sagt 0,06\u00a0g, die letzten 20 verbrauchten 0,084\u00a0g.';
    await page.getByText(sentence).waitFor();
    await page.getByRole('button', { name: 'Fassung 2 anlegen' }).waitFor();
  });

  it('makes the new version with the keyboard, once and only when somebody says yes', async () => {
    const page = await open('dentist');
    const make = page.getByRole('button', { name: 'Make version 2' });
    await make.focus();
    await page.keyboard.press('Enter');
    await page.waitForURL('**do=version**');
    const dialog = page.getByRole('dialog');
    const rows = dialog.getByRole('table', { name: 'What would be different' }).locator('tbody tr');
    const paste = rows.filter({ hasText: 'The chosen shades, Taken out' }).locator('td');
    await eventually(
      async () => (await paste.allTextContents()).slice(1),
      ['0.06\u00a0g', '0.084\u00a0g'],
    );
    await dialog.getByRole('button', { name: 'Leave it as it is' }).click();
    await dialog.waitFor({ state: 'hidden' });
    expect(await versionNow()).toBe(1);
    await make.click();
    await dialog.getByRole('button', { name: 'Make version 2' }).click();
    await page.getByText('Version 2 of Front tooth composite is in use now.').waitFor();
    await page.getByText('Version 2 is in use, and no visit has used it yet.').waitFor();
    await page.getByText(/^The template says 0\.084 in the unit of the shade\. Nothing/).waitFor();
    expect(await versionNow()).toBe(2);
    expect(await page.getByRole('button', { name: /Make version/ }).count()).toBe(0);
    await page.getByRole('button', { name: 'Open the template' }).click();
    await page.waitForURL(`**/setup/templates/${s.template}`);
  });
});
