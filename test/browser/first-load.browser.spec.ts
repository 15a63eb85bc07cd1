import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Page } from 'playwright-core';
import { openSmallBook } from '../book/book.js';
import {
  openBrowser,
  signIn,
  startWebService,
  type TestBrowser,
  type WebService,
} from './harness/index.js';

const MOST_KILOBYTES = 250;

let web: WebService;
let browser: TestBrowser;
let page: Page;

beforeAll(async () => {
  web = await startWebService();
  await openSmallBook(web.service, 'light');
  browser = await openBrowser();
  page = await browser.open();
  await signIn(page, web.url, 'light.owner');
});

afterAll(async () => {
  await browser
    .closePages()
    .finally(() => browser.close())
    .finally(() => web.stop());
});

/** Compressed script that a screen loads into an empty cache, in kB. */
async function scriptOf(address: string): Promise<number> {
  const session = await page.context().newCDPSession(page);
  await session.send('Network.enable');
  await session.send('Network.setCacheDisabled', { cacheDisabled: true });
  await session.send('Network.setBypassServiceWorker', { bypass: true });
  const scripts = new Set<string>();
  let bytes = 0;
  session.on('Network.responseReceived', ({ requestId, type }) => {
    if (type === 'Script') scripts.add(requestId);
  });
  session.on('Network.loadingFinished', ({ requestId, encodedDataLength }) => {
    if (scripts.has(requestId)) bytes += encodedDataLength;
  });
  await page.goto(address, { waitUntil: 'networkidle' });
  await session.detach();
  return bytes / 1000;
}

describe('the first load', () => {
  it.each(['/today', '/chairside', '/shelves', '/costs', '/trace', '/setup'])(
    'of %s needs at most 250 kB of compressed script',
    async (screen) => {
      const kilobytes = await scriptOf(`${web.url}${screen}`);
      expect(kilobytes).toBeGreaterThan(50);
      expect(kilobytes).toBeLessThanOrEqual(MOST_KILOBYTES);
    },
  );
});
