import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import type { Page } from 'playwright-core';
import { button, ChairsideBench, card, post } from './chairside-bench.js';
import { expectAccessibleLooks, shot, signIn } from './harness/index.js';

let bench: ChairsideBench;

beforeAll(async () => {
  bench = await ChairsideBench.start();
});

beforeEach(() => bench.nextChart());

afterEach(() => bench.browser.closePages());

afterAll(() => bench.stop());

/** Letters typed into a list are forgotten when the machine pauses between them; arrows are not. */
async function chooseByArrows(page: Page, label: string, option: string): Promise<void> {
  const list = page.getByLabel(label);
  await list.and(page.locator(':focus')).waitFor();
  await list.locator('option', { hasText: option }).waitFor({ state: 'attached' });
  const chosen = () => list.evaluate((it: HTMLSelectElement) => it.selectedOptions[0]?.text);
  const count = await list.locator('option').count();
  for (let i = 0; i < count && (await chosen()) !== option; i += 1) {
    await page.keyboard.press('ArrowDown');
  }
  expect(await chosen()).toBe(option);
}

describe('a usual visit', () => {
  it('is recorded with the keyboard alone, and the next one needs less', async () => {
    const page = await bench.open();
    const type = (...keys: string[]) =>
      keys.reduce((before, key) => before.then(() => page.keyboard.press(key)), Promise.resolve());
    await page.getByLabel('Chart reference').focus();
    await page.keyboard.type(bench.reference);
    await type('Tab');
    await chooseByArrows(page, 'Dentist', 'mill.dentist');
    await type('Tab');
    await chooseByArrows(page, 'Room', 'Room 1');
    await page.getByLabel('Tooth number').focus();
    await page.keyboard.type('21');
    await type('Enter');
    await page.locator('[data-side="middle"]:focus').waitFor();
    await type('m', 'Tab', 'Space', 'Tab', 'Tab', 'Tab');
    await chooseByArrows(page, 'How it is made', 'Front tooth composite');
    await page.getByRole('checkbox', { name: /^Body 2/ }).waitFor();
    await type('Tab', 'Space');
    await card(page, '21 M').getByText('€2').waitFor();
    await type('Control+Enter');
    await bench.booked(page);
    expect((await bench.inTheBook()).map((each) => each.restorations)).toEqual(['21 M decay']);
    expect(await button(page, 'Next visit').evaluate((it) => it.matches(':focus'))).toBe(true);
    await type('Enter');
    await page.getByLabel('Chart reference').waitFor();
    expect(await page.getByLabel('Room').inputValue()).toBe(bench.book.room);
    await page.getByLabel('Tooth number').fill('11');
    await type('Enter');
    await page.locator('[data-side="middle"]:focus').waitFor();
    await type('m');
    expect(await page.getByLabel('How it is made').inputValue()).toBe(bench.book.template);
  });

  it('walks through the teeth with arrows, in either numbering, and the address keeps it', async () => {
    const page = await bench.open();
    await page.locator('[data-tooth="11"]').focus();
    for (const key of ['ArrowRight', 'ArrowRight', 'ArrowDown']) await page.keyboard.press(key);
    expect(await page.locator('[data-tooth]:focus').getAttribute('data-tooth')).toBe('32');
    await page.keyboard.press(' ');
    await card(page, '32').waitFor();
    await page.getByRole('radio', { name: 'Universal' }).check();
    await card(page, '23').waitFor();
    await page.getByRole('radio', { name: 'Primary' }).check();
    await button(page, 'F, upper left primary central incisor').click();
    await card(page, 'F').waitFor();
    await page.getByLabel('Chart reference').fill(bench.reference);
    await page.waitForURL(`**/chairside?**chart=${bench.reference}**`);
    await page.reload();
    await card(page, 'F').waitFor();
    await card(page, '23').waitFor();
    expect(new URL(page.url()).searchParams.get('numbers')).toBe('universal');
    expect(new URL(page.url()).searchParams.get('teeth')).toBe('primary');
    await button(page, 'Start over').click();
    expect(await page.getByRole('region', { name: 'F' }).count()).toBe(0);
  });

  it('is copied to the next tooth, with classes that fit, and shows the cost of each', async () => {
    const page = await bench.open();
    await bench.enter(page);
    expect(await card(page, '21 M').getByRole('radio', { name: 'III' }).isChecked()).toBe(true);
    expect(await card(page, '21 M').getByRole('radio', { name: 'II', exact: true }).count()).toBe(
      0,
    );
    await button(page, 'Same on 22').click();
    await button(page, 'Same on 23').click();
    await button(page, 'Same on 24').click();
    await card(page, '24 M').getByRole('radio', { name: 'II', exact: true }).waitFor();
    await button(page, 'Remove 23 M').click();
    await page.getByText('3 restorations').waitFor();
    await post(page);
    await bench.booked(page);
    const rows = await page.locator('tbody tr th').allTextContents();
    expect(rows.map((row) => row.slice(0, 4))).toEqual(['21 M', '22 M', '24 M']);
    const [visit] = await bench.inTheBook();
    const euros = `€${visit?.materialCost}`;
    expect(await page.locator('tfoot td').textContent()).toBe(euros);
    await page.reload();
    await bench.booked(page);
    expect(await button(page, 'Undo').count()).toBe(0);
  });

  it('is booked once when the button is pressed twice', async () => {
    const page = await bench.open();
    await bench.enter(page);
    await button(page, 'Book the visit').dblclick();
    await bench.booked(page);
    await page.waitForTimeout(300);
    expect(await bench.inTheBook()).toHaveLength(1);
  });

  it('is undone by whoever may', async () => {
    const page = await bench.open({}, 'dentist');
    await bench.enter(page);
    await post(page);
    await bench.booked(page);
    await button(page, 'Undo').click();
    await button(page, 'Reverse').click();
    await page.getByText('Please fill this in').waitFor();
    expect((await bench.inTheBook())[0]?.reversed).toBe(false);
    await page.getByLabel('Why').fill('Entered for the wrong chart.');
    await button(page, 'Reverse').click();
    await page.getByText('The visit was reversed.', { exact: false }).waitFor();
    expect((await bench.inTheBook())[0]?.reversed).toBe(true);
  });
});

describe('looks', () => {
  it('are accessible', async () => {
    const page = await bench.open({}, 'manager');
    await expectAccessibleLooks(page, 'chairside-empty');
    await bench.enter(page);
    await button(page, /^Paste, Body 2 \d/).click();
    await button(page, 'Choose another lot').click();
    await page.getByRole('radio', { name: /^P-2/ }).waitFor();
    await expectAccessibleLooks(page, 'chairside');
    await post(page);
    await bench.booked(page);
    await expectAccessibleLooks(page, 'chairside-booked');
  });

  it('speaks German', async () => {
    const page = await bench.open();
    await bench.enter(page);
    await page.getByLabel('Language').selectOption('de');
    await page.getByRole('heading', { name: 'Was gebraucht wird' }).waitFor();
    await page.getByText('mittlerer Schneidezahn oben links').first().waitFor();
    await shot(page, 'chairside-1440-german');
  });

  it('is not shown to whoever may not record', async () => {
    const page = await bench.browser.open();
    await signIn(page, bench.web.url, 'mill.auditor', '/chairside');
    await page.getByText('Your role may not open this screen.').waitFor();
  });
});
