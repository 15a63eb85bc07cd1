import { afterAll, afterEach, beforeAll, describe, expect, it } from '@jest/globals';
import type { Page } from 'playwright-core';
import { restoration } from '../book/book.js';
import { openPricedBook, type PricedBook, planBody } from '../pricing/pricing-book.js';
import {
  eventually,
  expectAccessible,
  expectAccessibleLooks,
  FixedClock,
  openBrowser,
  type PageOptions,
  shot,
  startWebService,
  type TestBrowser,
  TODAY,
  type WebService,
} from './harness/index.js';
import { dialogOf, errorAt, openAs } from './setup-steps.js';

let browser: TestBrowser;
let web: WebService;
let book: PricedBook;

beforeAll(async () => {
  const clock = new FixedClock(TODAY);
  [browser, web] = await Promise.all([openBrowser(), startWebService({ clock })]);
  book = await openPricedBook(web.service, 'mill');
  const rate = { validFrom: '2026-01-01', yearlyCost: '168000', practicalMinutes: 192_000 };
  await book.book.done('POST', '/cost-rates', rate);
});

afterEach(() => browser.closePages());

afterAll(async () => {
  await browser.close();
  await web.stop();
});

const open = (role: string, path: string, options: PageOptions = {}): Promise<Page> =>
  openAs({ browser, web }, role, path, options);

const saveAs = (page: Page, name: string) =>
  dialogOf(page).getByRole('button', { name, exact: true }).click();

let plans = 0;
let fees = 0;

/** A fee and a plan that no other test, and no second try of this one, has changed. */
async function freshPlan(): Promise<{ plan: string; fee: string; code: string }> {
  const name = `Meadow plan ${++plans}`;
  const plan = (await book.book.done('POST', '/fee-plans', planBody({ name }))).id ?? '';
  const code = `SIDE-${++fees}X`;
  const from = { validFrom: '2026-01-01' };
  const body = { ...from, code, name: `Side tooth ${code}`, feeClass: 'side', fee: '250' };
  const fee = (await book.book.done('POST', '/fees', body)).id ?? '';
  const terms = `/fee-plans/${plan}/terms`;
  await book.book.done('POST', terms, { ...from, feeId: fee, allowedFee: '180' });
  await book.book.done('POST', terms, { ...from, feeClass: 'Side', coverage: '0.8' });
  return { plan, fee, code };
}

interface Line {
  readonly planPays: string;
  readonly patientPays: string;
  readonly writeOff: string;
}

/** What the service says about one decayed tooth under the plan. */
async function quoted(balance: { deductibleLeft: string; maximumLeft: string }): Promise<Line> {
  const { ways } = await book.book.done<{ ways: { way: string; lines: Line[] }[] }>(
    'POST',
    '/quotes',
    { planId: book.plan, quotedOn: TODAY, balance, restorations: [restoration(book)] },
  );
  const [line] = ways.find(({ way }) => way === 'all in one visit')?.lines ?? [];
  if (!line) throw new Error(`No line in ${JSON.stringify(ways.map(({ way }) => way))}`);
  return line;
}

describe('a plan', () => {
  it('is entered with who states its ceiling, and says what the ceiling means', async () => {
    const page = await open('dentist', '/setup/plans');
    await page.getByRole('link', { name: 'Meadow plan' }).waitFor();
    await page.getByRole('button', { name: 'Add a plan' }).click();
    const form = dialogOf(page);
    await form.getByLabel('Looked up on').fill('2026-05-05');
    await saveAs(page, 'Save');
    expect(await errorAt(form.getByLabel('Name of the plan'))).toContain('Please fill this in');
    expect(await errorAt(form.getByLabel('Deductible a year'))).toContain('Please fill this in');
    expect(await errorAt(form.getByLabel('Who states that'))).toContain('Please fill this in');
    expect(await errorAt(form.getByLabel('Looked up on'))).toContain('Must not be after today');
    await form.getByLabel('Name of the plan').fill(`Brook plan ${++plans}`);
    await form.getByLabel('Deductible a year').fill('0');
    await form.getByLabel('The allowed fee also binds').selectOption('both');
    await form.getByText('Neither work the plan never covers').waitFor();
    await form.getByLabel('Who states that').fill('Contract of 2025, section 3');
    await form.getByLabel('Looked up on').fill('2026-05-04');
    await expectAccessible(page);
    await shot(page, 'plan-form');
    await form.getByLabel('Looked up on').press('Enter');
    await page.waitForURL(/\/setup\/plans\/[0-9a-f-]{36}$/);
    await page.getByText('Contract of 2025, section 3. Looked up on 4 May 2026').waitFor();
    await page.getByText('Nothing stated yet').waitFor();
  });

  it('forgets the source when another ceiling is chosen', async () => {
    const { plan } = await freshPlan();
    const page = await open('dentist', `/setup/plans/${plan}?edit=1`);
    const form = dialogOf(page);
    const ceiling = form.getByLabel('The allowed fee also binds');
    const source = form.getByLabel('Who states that');
    await ceiling.selectOption('exhausted');
    await eventually(() => source.inputValue(), '');
    await saveAs(page, 'Save');
    expect(await errorAt(source)).toContain('the ceiling is another one');
    expect(await errorAt(form.getByLabel('Looked up on'))).toContain('the ceiling is another one');
    await ceiling.selectOption('never');
    await eventually(() => source.inputValue(), 'Contract of 2024, section 7');
    await saveAs(page, 'Save');
    await form.waitFor({ state: 'detached' });
    await page.waitForURL(`${web.url}/setup/plans/${plan}`);
  });
});

describe('what a plan says', () => {
  const OF_250 = 'Of €250.00 the plan pays €144.00, the patient €36.00; €70.00 is written off.';

  it('is told in money, exactly as a quote works it out', async () => {
    const line = await quoted({ deductibleLeft: '0', maximumLeft: '1500' });
    expect(line).toMatchObject({ planPays: '144.00', patientPays: '36.00', writeOff: '70.00' });
    const page = await open('auditor', `/setup/plans/${book.plan}`);
    await page.getByRole('row', { name: 'FRONT-1' }).getByText(OF_250).first().waitFor();
    await page.getByRole('row', { name: 'Basic' }).getByText(`FRONT-1: ${OF_250}`).waitFor();
    // Cosmetic work is shown as what it is, whatever the terms of its class pay for decay.
    await page.getByText('Made because of looks: Of €320.00 the plan pays €0.00').waitFor();
    await shot(page, 'plan');
  });

  it('is tried on a fee with what is left of a year; the address keeps it', async () => {
    const line = await quoted({ deductibleLeft: '50', maximumLeft: '60' });
    const page = await open('manager', `/setup/plans/${book.plan}`);
    await page.getByText(OF_250).first().waitFor();
    await page.getByLabel('Fee', { exact: true }).selectOption(book.insuredFee);
    await page.waitForURL(/fee=/);
    await page.getByText('Of €250.00 the plan pays €104.00, the patient €76.00').waitFor();
    await page.getByText('less €50.00 of deductible, and pays 80% of it: €104.00.').waitFor();
    await page.getByLabel('Maximum left').fill('60');
    await page.waitForURL(/maximum=60/);
    await page.getByText('No more than €60.00 of the maximum is left.').waitFor();
    const told = `Of €250.00 the plan pays €${line.planPays}, the patient €${line.patientPays}`;
    await page.getByText(told).waitFor();
    expect(await page.getByLabel('Made because of').count()).toBe(0);
    await page.getByLabel('Fee', { exact: true }).selectOption(book.cosmeticFee);
    await page.getByText('does not pay for this when made because of looks').waitFor();
    await page.getByLabel('Deductible left').fill('51');
    await page.getByText('Must not be more than the plan gives in a year').waitFor();
    await page.reload();
    await page.getByText('Must not be more than the plan gives in a year').waitFor();
    await page.getByLabel('Deductible left').fill('0');
    await page.waitForURL(/deductible=0(&|$)/);
    await page.getByText('Of €320.00 the plan pays €0.00, the patient €320.00').first().waitFor();
  });

  it('is added by the keyboard from a day on; what was stated before stays', async () => {
    const { plan, code } = await freshPlan();
    const page = await open('dentist', `/setup/plans/${plan}`);
    await page.getByText(OF_250).first().waitFor();
    await page.getByRole('button', { name: 'Add terms', exact: true }).focus();
    await page.keyboard.press('Enter');
    const form = dialogOf(page);
    await form.getByLabel('About').waitFor();
    await saveAs(page, 'Add terms');
    expect(await errorAt(form.getByLabel('Fee', { exact: true }))).toContain('Please choose');
    expect(await errorAt(form.getByLabel('The plan pays'))).toContain('Please state');
    await form.getByLabel('Fee', { exact: true }).focus();
    await page.keyboard.type(code);
    const offered = page.getByRole('listbox', { name: 'Fee' }).getByRole('option');
    await eventually(() => offered.allTextContents(), [`${code} · Side tooth ${code}`]);
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    await form.getByLabel('From this day on').fill('2026-06-01');
    await form.getByLabel('Allowed fee', { exact: false }).first().fill('190');
    await form.getByLabel('Paid as').fill('150');
    await form.getByLabel('The plan pays').fill('101');
    await saveAs(page, 'Add terms');
    expect(await errorAt(form.getByLabel('The plan pays'))).toContain('from 0 to 100');
    await form.getByLabel('The plan pays').fill('62,5');
    await form.getByRole('checkbox', { name: 'looks' }).check();
    await saveAs(page, 'Add terms');
    expect(await errorAt(form.getByLabel('Who states that work for looks'))).toContain('fill');
    await form.getByRole('checkbox', { name: 'looks' }).uncheck();
    // 62.5 % of 150.00 is 93.75; the rest up to 190.00 may be billed, 60.00 may not.
    const words = 'Of €250.00 the plan pays €93.75, the patient €96.25; €60.00 is written off.';
    await form.getByText(`${code}: ${words}`).waitFor();
    await expectAccessible(page);
    await shot(page, 'term-form');
    await form.getByLabel('The plan pays').press('Enter');
    await form.waitFor({ state: 'detached' });
    const rows = page.getByRole('row', { name: code });
    await rows.getByText(words).waitFor();
    await rows.getByText(OF_250).first().waitFor();
    await page.getByText('Not yet').waitFor();
  });

  it('is replaced by what is stated later for the same day', async () => {
    const { plan } = await freshPlan();
    const page = await open('dentist', `/setup/plans/${plan}?new=class`);
    const form = dialogOf(page);
    await form.getByLabel('Class', { exact: true }).fill('side');
    await form.getByLabel('Class', { exact: true }).press('Escape');
    await form.getByLabel('From this day on').fill('2026-01-01');
    await form.getByLabel('The plan pays').fill('50');
    await form.getByRole('checkbox', { name: 'looks' }).check();
    await saveAs(page, 'Add terms');
    await form.getByText('Work for looks can be covered for a single fee only').waitFor();
    await form.getByRole('checkbox', { name: 'looks' }).uncheck();
    await saveAs(page, 'Add terms');
    await form.waitFor({ state: 'detached' });
    const classes = page.getByRole('region', { name: 'What it says about classes' }).last();
    await classes.getByText('Replaced', { exact: true }).waitFor();
    await classes.getByText('50% for decay and fracture').waitFor();
    await page.getByText('the plan pays €90.00, the patient €90.00').first().waitFor();
  });
});

describe('looks', () => {
  it('are accessible in light and dark, wide and narrow', async () => {
    const page = await open('owner', '/setup/fees');
    const screens = {
      plans: '/setup/plans',
      'plans-new': '/setup/plans?new=1',
      plan: `/setup/plans/${book.plan}?fee=${book.insuredFee}`,
      'plan-new': `/setup/plans/${book.plan}?new=fee`,
      rates: '/setup/rates',
      'rates-new': '/setup/rates?new=1',
    };
    for (const [name, path] of Object.entries(screens)) {
      await page.goto(`${web.url}${path}`);
      await page.locator(path.includes('new') ? 'form' : '#content h1').waitFor();
      await expectAccessibleLooks(page, name);
    }
  }, 300_000);

  it('speak German', async () => {
    const page = await open('owner', '/setup');
    await page.evaluate(() => localStorage.setItem('traybook.language', 'de'));
    await page.goto(`${web.url}/setup/plans/${book.plan}?fee=${book.insuredFee}`);
    await page.getByRole('heading', { name: 'Was sie über Honorare sagt' }).waitFor();
    await page
      .getByText(/Von 250,00.€ zahlt die Versicherung/)
      .first()
      .waitFor();
    await page.goto(`${web.url}/setup/rates`);
    await page.getByText('Leerzeit wird der Arbeit nicht aufgeladen').waitFor();
    await page.goto(`${web.url}/setup/balances?new=1`);
    await dialogOf(page).getByLabel('Vom Selbstbehalt übrig').fill('x');
    await dialogOf(page).getByRole('button', { name: 'Speichern' }).click();
    await page.getByText('Bitte eine Zahl schreiben, z. B. 0,06').first().waitFor();
    await page.goto(`${web.url}/setup/fees`);
    await page.getByText('gemacht wegen Aussehen').waitFor();
  });
});
