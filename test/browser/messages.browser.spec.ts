import { afterAll, afterEach, beforeAll, describe, expect, it } from '@jest/globals';
import { SendNotices, WatchAlerts } from '../../libs/purchasing/src/index.js';
import { type Hook, type MailBox, openHook, openMailBox } from '../purchasing/post-boxes.js';
import {
  eventually,
  expectAccessible,
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
import { errorAt, openAs } from './setup-steps.js';

let browser: TestBrowser;
let web: WebService;
let mail: MailBox;
let hook: Hook;

beforeAll(async () => {
  [browser, mail, hook] = await Promise.all([openBrowser(), openMailBox(), openHook()]);
  const clock = new FixedClock(TODAY);
  web = await startWebService({ clock, mail: { smtpUrl: mail.url } });
  await openBusyBook(web.service, 'mill');
});

afterEach(() => browser.closePages());

afterAll(async () => {
  await browser.close();
  await web.stop();
  await Promise.all([mail.close(), hook.close()]);
});

const open = (role: string, path: string, options = {}) =>
  openAs({ browser, web }, role, path, options);

describe('putting something off', () => {
  it('takes a day and a reason, and can be taken up again', async () => {
    const page = await open('manager', '/today');
    const low = page.getByRole('region', { name: 'Running low' });
    const putOff = low.getByRole('button', { name: 'Put off: Clear matrix strip' });
    await putOff.focus();
    await page.keyboard.press('Enter');
    const dialog = page.getByRole('dialog');
    await dialog.getByLabel('Until').fill('2026-09-01');
    await dialog.getByRole('button', { name: 'Put off' }).click();
    expect(await errorAt(dialog.getByLabel('Why it can wait'))).toContain('Please fill this in');
    expect(await errorAt(dialog.getByLabel('Until'))).toContain('2 Aug 2026');
    await expectAccessible(page);
    await shot(page, 'today-put-off');
    await dialog.getByLabel('Until').fill('2026-05-08');
    await dialog.getByLabel('Why it can wait').fill('Comes on Thursday with the dental fair.');
    await dialog.getByRole('button', { name: 'Put off' }).click();
    await page.getByText('Clear matrix strip comes back on 8 May 2026.').waitFor();
    await page.getByText('1 thing was put off.').waitFor();
    await low.waitFor({ state: 'detached' });
    await page.getByRole('link', { name: 'Show what was put off' }).click();
    await page.getByText('Put off until 8 May 2026 by mill.manager').waitFor();
    await shot(page, 'today-snoozed');
    await expectAccessible(page);
    await page.getByRole('button', { name: 'Take it up again: Clear matrix strip' }).click();
    await page.getByText('Clear matrix strip is back on the list.').waitFor();
    await page.getByRole('link', { name: 'Back to what needs somebody' }).click();
    await low.waitFor();
  });

  it('is not offered to the assistant, nor for a held lot', async () => {
    const page = await open('assistant', '/today');
    await page.getByRole('region', { name: 'Running low' }).waitFor();
    expect(await page.getByRole('button', { name: /^Put off/ }).count()).toBe(0);
    const manager = await open('manager', '/today?kind=recalled+lot+on+hand');
    await manager.getByRole('region', { name: 'Held lots still on the shelf' }).waitFor();
    expect(await manager.getByRole('button', { name: /^Put off/ }).count()).toBe(0);
  });
});

describe('messages', () => {
  it('are turned on, tried and seen to arrive', async () => {
    const page = await open('owner', '/setup/messages', { refusals: [400, 422] });
    await page.getByLabel('Send the daily mail').check();
    await page.getByRole('button', { name: 'Save the daily mail' }).click();
    expect(await errorAt(page.getByRole('textbox', { name: 'To' }))).toContain(
      'Please fill this in',
    );
    await page.getByRole('textbox', { name: 'To' }).fill('office@mill.example\nowner@mill');
    await page.getByRole('button', { name: 'Save the daily mail' }).click();
    await errorAt(page.getByRole('textbox', { name: 'To' }));
    await page.getByRole('textbox', { name: 'To' }).fill('office@mill.example');
    await page.getByRole('button', { name: 'Save the daily mail' }).click();
    await page.getByText('Saved.').waitFor();
    await page.getByRole('button', { name: 'Send a trial message' }).first().click();
    await page.getByText('The trial message arrived.').waitFor();
    expect(mail.mails.at(-1)?.subject).toBe('Traybook: a trial message');
    await page.getByLabel('Send messages').check();
    await page.getByLabel('Address', { exact: true }).fill('http://office.example/');
    await page.getByRole('button', { name: 'Save the address' }).click();
    await errorAt(page.getByLabel('Address', { exact: true }));
    await page.getByLabel('Address', { exact: true }).fill(hook.url);
    await page.getByRole('button', { name: 'Save the address' }).click();
    await page.getByText('Key of the signatures:').waitFor();
    for (const practice of await web.service.app.get(WatchAlerts).run()) {
      await web.service.app.get(SendNotices).run(practice);
    }
    await page.reload();
    const sent = page.getByRole('table', { name: 'What went out' });
    await eventually(() => sent.getByText('Arrived').count(), 2);
    expect(mail.mails.at(-1)?.text).toContain('Etchant gel (E-1)');
    await expectAccessibleLooks(page, 'messages');
  }, 120_000);

  it('speak German, and are the owner’s alone', async () => {
    const page = await open('owner', '/setup/messages');
    await page.getByLabel('Language').selectOption('de');
    await page.getByRole('heading', { name: 'Nachrichten', level: 1 }).waitFor();
    const manager = await browser.open();
    await signIn(manager, web.url, 'mill.manager', '/setup/messages');
    await manager.getByText('Your role may not open this screen.').waitFor();
  });
});
