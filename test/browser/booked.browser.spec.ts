import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import { openStockedBook, type SmallBook } from '../book/book.js';
import {
  eventually,
  expectAccessibleLooks,
  FixedClock,
  openBrowser,
  shot,
  signIn,
  startWebService,
  type TestBrowser,
  TODAY,
  type WebService,
} from './harness/index.js';

let browser: TestBrowser;
let web: WebService;
let s: SmallBook;
let practices = 0;

beforeAll(async () => {
  [browser, web] = await Promise.all([
    openBrowser(),
    startWebService({ clock: new FixedClock(TODAY) }),
  ]);
});

// A practice of its own for each: a second try finds nothing of the first.
beforeEach(async () => {
  practices += 1;
  s = await openStockedBook(web.service, `mill${practices}`);
});

afterEach(() => browser.closePages());

afterAll(async () => {
  await browser.close();
  await web.stop();
});

async function open(path: string, options: Parameters<TestBrowser['open']>[0] = {}) {
  const page = await browser.open(options);
  await signIn(page, web.url, `mill${practices}.manager`, path);
  await page.locator('#content h1').waitFor();
  return page;
}

const book = (day: string, changes: object = {}) =>
  s.book.done('POST', '/booked-visits', {
    ...{ day, restorations: [{ templateId: s.template }], ...changes },
  });
const stateOf = async (id: string) =>
  (await s.book.done<{ state: string; kept: number }>('GET', `/booked-visits/${id}`)).state;

describe('booked visits', () => {
  it('are booked, changed and dropped, and each day says what it will use', async () => {
    const page = await open('/visits');
    await page.getByRole('link', { name: 'Booked visits' }).click();
    await page.waitForURL('**/visits/booked');
    await page.getByText('Nothing is booked in this week.').waitFor();
    await page.getByRole('button', { name: 'Book a visit' }).click();
    const dialog = page.getByRole('dialog');
    await dialog.getByRole('button', { name: 'Book a visit' }).click();
    await dialog.getByText('Needed').or(dialog.locator('[aria-invalid="true"]')).first().waitFor();
    await dialog.getByLabel('Day').fill('2026-05-05');
    await dialog.getByLabel('How many alike').fill('6');
    await dialog.getByLabel('Template').fill('Front');
    await page.getByRole('option', { name: 'Front tooth composite' }).click();
    await dialog.getByRole('button', { name: 'Book a visit' }).click();
    await dialog.waitFor({ state: 'detached' });
    const tuesday = page.getByRole('region', { name: /Tuesday/ });
    await tuesday.getByText('6 visits', { exact: true }).waitFor();
    await tuesday.getByText('6 visits to come, 240 min of chair time').waitFor();
    // A bib for each; nobody said the shade, so the paste is left out.
    await tuesday.getByText('6\u00a0pieces').first().waitFor();
    await tuesday.getByText('The paste of 6 visits is not in it').waitFor();
    await tuesday.getByRole('button', { name: /^Change/ }).click();
    await page.waitForURL('**form=**');
    await dialog.getByLabel('Chart reference').fill('C-12');
    await dialog.getByRole('button', { name: 'Save' }).click();
    await dialog.getByText('A chart stands for one patient: book 1.').waitFor();
    await dialog.getByLabel('How many alike').fill('1');
    await dialog.getByLabel('Tooth').fill('21');
    await dialog.getByLabel('Surfaces').fill('MD');
    await dialog.getByRole('button', { name: 'Save' }).click();
    await dialog.waitFor({ state: 'detached' });
    await tuesday.getByText('21 MD, Front tooth composite').waitFor();
    await tuesday.getByRole('button', { name: /^Drop: Chart C-12/ }).click();
    await page.waitForURL('**drop=**');
    await dialog.getByLabel('Why').fill('moved away');
    await dialog.getByRole('button', { name: 'Drop it' }).click();
    await tuesday.getByText('dropped: moved away').waitFor();
    expect(await tuesday.getByRole('button').count()).toBe(0);
  });

  it('are not overwritten unseen: who comes second is told, and sees what was said', async () => {
    const { id = '' } = await book('2026-05-05', { chartReference: 'C-60' });
    const page = await open('/visits/booked', { refusals: [409] });
    const tuesday = page.getByRole('region', { name: /Tuesday/ });
    const dialog = page.getByRole('dialog');
    const change = async (from: string) => {
      await tuesday.getByRole('button', { name: new RegExp(`^Change: Chart ${from}`) }).click();
      await page.waitForURL('**form=**');
      await dialog.getByLabel('Chart reference').fill('C-62');
    };
    await change('C-60');
    await s.book.done('PUT', `/booked-visits/${id}`, {
      ...{ version: 1, day: '2026-05-05', chartReference: 'C-61' },
      restorations: [{ templateId: s.template }],
    });
    await dialog.getByRole('button', { name: 'Save' }).click();
    await dialog.getByText('Somebody changed this booking after you opened it.').waitFor();
    await dialog.getByRole('button', { name: 'Cancel' }).click();
    await dialog.waitFor({ state: 'detached' });
    await tuesday.getByText('Chart C-61').waitFor();
    await change('C-61');
    await dialog.getByRole('button', { name: 'Save' }).click();
    await dialog.waitFor({ state: 'detached' });
    await tuesday.getByText('Chart C-62').waitFor();
  });

  it('go to the chairside screen and are recorded there', async () => {
    const { id = '' } = await book(TODAY, {
      chartReference: 'C-40',
      ...{ dentistId: s.book.practice.people.dentist.id, locationId: s.room },
      restorations: [
        {
          ...{ templateId: s.template, tooth: '21', surfaces: 'M', reason: 'decay' },
          shades: [s.paste.id],
        },
      ],
    });
    const page = await open('/visits/booked');
    await page.getByRole('link', { name: /^Record it now: Chart C-40/ }).click();
    await page.getByText('This is the visit that was planned for 4 May 2026.').waitFor();
    await eventually(() => page.getByLabel('Chart reference').inputValue(), 'C-40');
    await eventually(async () => new URL(page.url()).searchParams.has('booking'), false);
    const post = page.getByRole('button', { name: 'Book the visit' });
    await post.click();
    await page.getByRole('heading', { name: 'C-40 is booked' }).waitFor();
    expect(await stateOf(id)).toBe('kept');
    await page.goto(`${web.url}/visits/booked`);
    await page.getByText('recorded', { exact: true }).waitFor();
    await page.getByRole('link', { name: 'Open the visit' }).click();
    await page.getByRole('heading', { name: 'Visit of C-40' }).waitFor();
    // One that is done leads nowhere, and what was begun is not overwritten.
    await page.goto(`${web.url}/chairside?booking=${id}`);
    await page.getByText('was recorded or dropped meanwhile').waitFor();
  });

  it('are looked at in all looks, week by week, in both languages', async () => {
    await book('2026-05-06', { chartReference: 'C-51', restorations: [said('11', 'MI')] });
    await book('2026-05-06', { alike: 4 });
    await book('2026-05-07', {
      chartReference: 'C-52',
      restorations: [said('21', 'M'), said('22', 'D')],
      ...{ dentistId: s.book.practice.people.dentist.id, locationId: s.room },
    });
    await book('2026-05-13', { alike: 2 });
    const page = await open('/visits/booked');
    await page.getByText('Chart C-52').waitFor();
    await shot(page, 'booked');
    await expectAccessibleLooks(page, 'booked');
    await page.getByRole('link', { name: 'Week after' }).click();
    await page.waitForURL('**week=2026-05-11');
    await page.getByText('2 visits', { exact: true }).waitFor();
    await page.getByRole('link', { name: 'This week' }).click();
    await page.waitForURL('**/visits/booked');
    await page.getByText('Chart C-52').waitFor();
    await page.setViewportSize({ width: 390, height: 844 });
    await page.evaluate(() => localStorage.setItem('traybook.language', 'de'));
    await page.reload();
    await page.getByRole('heading', { name: 'Vorgemerkte Besuche' }).waitFor();
    await page.getByText('Kartei C-52').waitFor();
    await shot(page, 'booked-390');
    await page.getByRole('button', { name: 'Besuch vormerken' }).click();
    await page.getByRole('dialog').getByLabel('Vorlage').waitFor();
    await shot(page, 'booked-form-390');
    const wide = await page.evaluate(() => document.documentElement.scrollWidth);
    expect(wide).toBeLessThanOrEqual(390);
  });

  it('stand for the whole day once the practice says that its diary is full', async () => {
    const page = await open('/visits/booked');
    await page.getByText('What a booked day means for ordering').click();
    await page.getByLabel('Every visit of the practice is booked here').check();
    const days = page.getByLabel('Days that are as full as they will get');
    await days.fill('99');
    await page.getByRole('button', { name: 'Save' }).click();
    await page.getByText('A whole number from 0 to 60.').waitFor();
    await days.fill('5');
    await page.getByRole('button', { name: 'Save' }).click();
    await page.getByText('Ordering reckons with it from now on.').waitFor();
    const planning = await s.book.done('GET', '/reorder/settings/booked-visits');
    expect(planning).toEqual({ wholeDay: true, fullDays: 5 });
  });

  it('are named by the alert about what they will lack', async () => {
    await book('2026-05-05', { chartReference: 'C-60', restorations: [said('21', 'M')] });
    await book('2026-05-06', { alike: 200 });
    const page = await open('/today');
    const group = page.getByRole('region', { name: 'Runs out before a delivery' });
    const strips = group.getByRole('listitem').filter({ hasText: 'Clear matrix strip' });
    await strips.getByText(/Booked and at risk: .*6 May 2026, 200 visits/).waitFor();
    await shot(page, 'booked-alert');
    await strips.getByRole('link', { name: /^See what to order/ }).click();
    await page.waitForURL('**/ordering');
  });
});

function said(tooth: string, surfaces: string) {
  const { template: templateId, paste } = s;
  return { templateId, tooth, surfaces, reason: 'decay', shades: [paste.id] };
}
