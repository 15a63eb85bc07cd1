import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import { button, ChairsideBench, card, loseNetwork, post } from './chairside-bench.js';
import { expectAccessible, shot } from './harness/index.js';

let bench: ChairsideBench;

beforeAll(async () => {
  bench = await ChairsideBench.start();
});

beforeEach(() => bench.nextChart());

afterEach(() => bench.browser.closePages());

afterAll(() => bench.stop());

describe('without a network', () => {
  it('keeps the visit, says so, survives a reload, and books it exactly once', async () => {
    const page = await bench.open();
    await bench.enter(page);
    await loseNetwork(page);
    await page.getByText('No network.', { exact: false }).waitFor();
    await button(page, 'Keep the visit').click();
    await page.getByText('Kept on this device;', { exact: false }).waitFor();
    const waiting = page.getByRole('region', { name: 'On this device' });
    await waiting.getByText('waits for the network').waitFor();
    await expectAccessible(page);
    await shot(page, 'chairside-offline');
    expect(await bench.inTheBook()).toHaveLength(0);
    await page.context().setOffline(false);
    await waiting.getByText('booked', { exact: true }).waitFor();
    expect(await bench.inTheBook()).toHaveLength(1);
    await page.reload();
    await waiting.getByText(bench.reference).waitFor();
    await page.waitForTimeout(500);
    expect(await bench.inTheBook()).toHaveLength(1);
    await button(page, 'Done').click();
    expect(await waiting.count()).toBe(0);
  });

  it('loads again on a device that has opened it only once', async () => {
    const page = await bench.open();
    // What came before the worker took over is asked for again behind the page.
    const lists = ['session', 'dentists', 'locations', 'consumables', 'procedure-templates'];
    await page.waitForFunction(async (names) => {
      const kept = await (await caches.open('traybook-answers')).keys();
      const paths = kept.map(({ url }) => new URL(url).pathname);
      return names.every((name) => paths.includes(`/api/${name}`));
    }, lists);
    await bench.enter(page);
    await page.waitForLoadState('networkidle');
    await loseNetwork(page);
    await page.reload();
    await card(page, '21 M').waitFor();
    const dentist = page.getByLabel('Dentist').locator('option', { hasText: 'mill.dentist' });
    await dentist.waitFor({ state: 'attached' });
  });

  it('loads again, with what was entered, and several tabs book it once', async () => {
    const page = await bench.open();
    await page.waitForFunction(
      "caches.open('traybook-shell').then((shell) => shell.keys()).then((keys) => keys.length > 3)",
    );
    // From here on every answer passes the worker, and is kept before the page has it.
    await page.waitForFunction('navigator.serviceWorker.controller !== null');
    await page.reload();
    await bench.enter(page);
    await page.waitForLoadState('networkidle');
    await loseNetwork(page);
    await page.reload();
    await card(page, '21 M').waitFor();
    await post(page);
    await page.getByText('waits for the network').waitFor();
    const other = await page.context().newPage();
    await other.goto(`${bench.web.url}/chairside`);
    await other.getByText('waits for the network').waitFor();
    await page.context().setOffline(false);
    await page.getByText('booked', { exact: true }).waitFor();
    await other.getByText('booked', { exact: true }).waitFor();
    await other.waitForTimeout(500);
    expect(await bench.inTheBook()).toHaveLength(1);
  });

  it('shows a visit that is refused later with its reason, to be corrected', async () => {
    const page = await bench.open({ refusals: [422] });
    await bench.enter(page);
    await loseNetwork(page);
    await button(page, 'Keep the visit').click();
    await page.getByText('waits for the network').waitFor();
    const { dentist, auditor } = bench.book.book.practice.people;
    const kept = "localStorage.getItem('traybook.outbox')";
    const edit = `localStorage.setItem('traybook.outbox', ${kept}.replaceAll('${dentist.id}', '${auditor.id}'))`;
    // Under the lock of whoever sends: an attempt under way would write back what it took out.
    await page.evaluate(`navigator.locks.request('traybook.outbox', () => { ${edit}; })`);
    await page.context().setOffline(false);
    await page.getByText('not accepted').waitFor();
    await page.getByText('Names a person who is not a dentist', { exact: false }).waitFor();
    await button(page, 'Correct it').click();
    await card(page, '21 M').waitFor();
    await page.getByLabel('Dentist').selectOption({ label: 'mill.dentist' });
    await post(page);
    await bench.booked(page);
    expect(await bench.inTheBook()).toHaveLength(1);
  });
});
