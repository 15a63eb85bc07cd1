import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import { ChairsideBench } from './chairside-bench.js';
import { expectAccessible, shot } from './harness/index.js';
import { wedge } from './scan-steps.js';

const GTIN = '09521234543213'; // of the prefix that GS1 keeps for examples

let bench: ChairsideBench;

beforeAll(async () => {
  bench = await ChairsideBench.start();
  const { book, paste } = bench.book;
  await book.done('PATCH', `/presentations/${paste.presentation}`, { deviceIdentifier: GTIN });
});

beforeEach(() => bench.nextChart());

afterEach(() => bench.browser.closePages());

afterAll(() => bench.stop());

describe('a pack in the hand', () => {
  it('gives its lot to the usage line of the visit, wherever the focus is', async () => {
    const page = await bench.open();
    await bench.enter(page);
    const reference = page.getByLabel('Chart reference');
    await reference.focus();
    await wedge(page, `]d201${GTIN}1728053110P-2`);
    await page.getByText('lot P-2 · scanned').waitFor();
    expect(await reference.inputValue()).toBe(bench.reference);
    await wedge(page, '(01)09521000000018(10)K-1');
    await page.getByText('which this visit does not use yet.').waitFor();
    await shot(page, 'scan-chairside');
    await expectAccessible(page);
  });
});
