import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import { button, ChairsideBench, post } from './chairside-bench.js';
import { expectAccessible, shot } from './harness/index.js';

let bench: ChairsideBench;

beforeAll(async () => {
  bench = await ChairsideBench.start();
});

beforeEach(() => bench.nextChart());

afterEach(() => bench.browser.closePages());

afterAll(() => bench.stop());

describe('what was different', () => {
  it('is a retake', async () => {
    const page = await bench.open();
    await bench.enter(page);
    await button(page, 'Add a retake').click();
    await page.getByText('21 M, retake 1').waitFor();
    await post(page);
    await bench.booked(page);
    await page.getByText('of it for retakes').waitFor();
    await page.getByRole('link', { name: 'Open the visit' }).click();
    await page.getByText('made 2 times', { exact: false }).waitFor();
  });

  it('is another amount, by steps or typed, and can be as planned again', async () => {
    const page = await bench.open();
    await bench.enter(page);
    await button(page, /^Paste, Body 2 0.06/).click();
    await button(page, 'More Paste, Body 2').click();
    await button(page, /^Paste, Body 2 0.07/).waitFor();
    await page.getByLabel('Amount of Paste, Body 2').fill('a little');
    await page.keyboard.press('Enter');
    await page.getByText('Please write a number').waitFor();
    await page.getByLabel('Amount of Paste, Body 2').fill('0,1');
    await page.keyboard.press('Enter');
    await button(page, /^Paste, Body 2 0.1 g/).waitFor();
    await button(page, /^As planned/).click();
    await button(page, /^Paste, Body 2 0.06/).waitFor();
    await page.getByLabel('Amount of Paste, Body 2').fill('0.2');
    await page.keyboard.press('Tab');
    await button(page, /^Paste, Body 2 0.2/).waitFor();
    await post(page);
    await bench.booked(page);
    await page.getByRole('link', { name: 'Open the visit' }).click();
    await page
      .getByRole('row', { name: /^Paste, Body 2 0.06/ })
      .getByText('0.2')
      .first()
      .waitFor();
  });

  it('is another lot, scanned or chosen', async () => {
    const page = await bench.open({ refusals: [422] });
    await bench.enter(page);
    const scan = page.getByLabel('Scan or type a lot number');
    await button(page, 'Use this lot').click();
    await page.getByText('Please fill this in').waitFor();
    await scan.fill('no such lot');
    await page.keyboard.press('Enter');
    await page.getByText('No lot in the book has this number').waitFor();
    await scan.fill('p-0');
    await page.keyboard.press('Enter');
    await page.getByText('expired on 2026-05-04', { exact: false }).waitFor();
    await scan.fill('p-2');
    await page.keyboard.press('Enter');
    await page.getByText('lot P-2 · scanned').waitFor();
    await page.getByText('Another lot should have been used first.').waitFor();
    await button(page, 'Do not use lot P-2').click();
    await page.getByText('lot P-1 · ', { exact: false }).first().waitFor();
    await button(page, /^Paste, Body 2 \d/).click();
    await button(page, 'Choose another lot').click();
    await page.getByRole('radio', { name: /^P-2 Store/ }).check();
    await page.getByText('lot P-2 · scanned').waitFor();
    await scan.fill('K-1');
    await page.keyboard.press('Enter');
    await page.getByText('which this visit does not use yet', { exact: false }).waitFor();
    await button(page, 'Add it to the visit').click();
    await page.getByText('lot K-1 · scanned').waitFor();
    await post(page);
    await bench.booked(page);
  });

  it('is something else that was used', async () => {
    const page = await bench.open();
    await bench.enter(page);
    await button(page, 'Add something').click();
    await button(page, 'Add to the visit').click();
    await page.getByText('Please fill this in').waitFor();
    await page.getByText('An amount above 0').waitFor();
    await page.getByRole('combobox', { name: 'What else was used' }).fill('Etch');
    await page.getByRole('option', { name: 'Etchant gel' }).click();
    await page.getByLabel('Amount (mL)').fill('0.3');
    await button(page, 'Add to the visit').click();
    await page.getByText('Added by hand').waitFor();
    await button(page, /^Etchant gel 0.3/).waitFor();
    await post(page);
    await bench.booked(page);
  });

  it('is more than the book has: it is recorded anyway', async () => {
    const page = await bench.open();
    await bench.enter(page, 'Capsule composite');
    await button(page, /^Paste in capsules, Enamel light \d/).click();
    await page.getByLabel('Amount of Paste in capsules').fill('50');
    await page.keyboard.press('Enter');
    await page.getByText('It is recorded anyway.', { exact: false }).waitFor();
    await page.getByText('1 not in the book').waitFor();
    await page.getByText('partly estimated').waitFor();
    await shot(page, 'chairside-shortfall');
    await expectAccessible(page);
    await post(page);
    await bench.booked(page);
    await page.getByText('Partly estimated', { exact: false }).waitFor();
  });
});

describe('a wrong entry', () => {
  it('is said beside what is wrong, and nothing is booked', async () => {
    const page = await bench.open();
    await post(page);
    expect(await page.getByText('Please fill this in').count()).toBeGreaterThan(0);
    expect(await page.getByLabel('Chart reference').getAttribute('aria-invalid')).toBe('true');
    await page.locator('input[name="chartReference"]:focus').waitFor();
    await page.getByText('Pick a tooth first').waitFor();
    await page.getByLabel('Tooth number').fill('99');
    await page.keyboard.press('Enter');
    await page.getByText('99 is no tooth in these numbers').waitFor();
    await page.getByLabel('Tooth number').fill('21');
    await page.keyboard.press('Enter');
    await page.getByLabel('Chart reference').fill(bench.reference);
    await page.getByLabel('Dentist').selectOption({ label: 'mill.dentist' });
    await page.getByLabel('Room').selectOption({ label: 'Room 1' });
    await page.getByLabel('Day').fill('2026-05-05');
    await post(page);
    for (const words of [
      'Not after today',
      'Tap at least one face of the tooth',
      'Say why it is made',
      'Choose how it is made',
    ]) {
      await page.getByText(words, { exact: true }).waitFor();
    }
    await expectAccessible(page);
    await page.getByLabel('Day').fill('2026-05-01');
    await page.getByRole('checkbox', { name: 'Distal' }).click();
    await page.getByRole('radio', { name: 'Wear' }).check();
    await page.getByLabel('How it is made').selectOption({ label: 'Front tooth composite' });
    await page.getByRole('checkbox', { name: /^Body 2/ }).waitFor();
    await page.waitForTimeout(200);
    await post(page);
    await page.getByText('This template asks for a shade').waitFor();
    expect(await bench.inTheBook()).toHaveLength(0);
    await page.getByRole('checkbox', { name: /^Body 2/ }).check();
    await post(page);
    await bench.booked(page);
    await page.getByText('1 May 2026', { exact: false }).waitFor();
  });

  it('that only the service sees is led to the control it is about', async () => {
    const page = await bench.open({ refusals: [422] });
    await bench.enter(page);
    await button(page, /^Clear matrix strip \d/).click();
    await page.getByLabel('Amount of Clear matrix strip').fill('1.5');
    await page.keyboard.press('Enter');
    await page.getByText('Must be a whole number of pieces').first().waitFor();
    await post(page);
    await page.getByText('Please look at what is marked.').waitFor();
    expect(await bench.inTheBook()).toHaveLength(0);
    await page.getByLabel('Amount of Clear matrix strip').fill('2');
    await page.keyboard.press('Enter');
    await button(page, /^Clear matrix strip 2/).waitFor();
    await post(page);
    await bench.booked(page);
  });
});
