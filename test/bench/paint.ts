import { chromium, type Page } from 'playwright-core';
import { startDemoService } from '../demo/demo-service.js';
import { PEOPLE } from '../demo/practice.js';

// How soon the largest content of a screen is painted on the demo data, from an empty cache, with the
// processor slowed down four-fold, beside the limit of 1.5 s; and what the first load weighs.

const LIMIT = 1500;
const SCREENS = ['/today', '/chairside', '/visits', '/shelves', '/costs', '/trace', '/setup'];

// Runs in the page, whose types this project's compiler does not know.
const LARGEST_PAINT = `new Promise((resolve) => {
  new PerformanceObserver((list) => resolve(list.getEntries().at(-1).startTime))
    .observe({ type: 'largest-contentful-paint', buffered: true });
})`;

interface Painted {
  readonly milliseconds: number;
  readonly kilobytes: number;
}

async function paint(page: Page, url: string): Promise<Painted> {
  const session = await page.context().newCDPSession(page);
  await session.send('Network.enable');
  await session.send('Network.setCacheDisabled', { cacheDisabled: true });
  await session.send('Emulation.setCPUThrottlingRate', { rate: 4 });
  let bytes = 0;
  const scripts = new Set<string>();
  session.on('Network.responseReceived', ({ requestId, type }) => {
    if (type === 'Script') scripts.add(requestId);
  });
  session.on('Network.loadingFinished', ({ requestId, encodedDataLength }) => {
    if (scripts.has(requestId)) bytes += encodedDataLength;
  });
  await page.goto(url, { waitUntil: 'networkidle' });
  const milliseconds = await page.evaluate<number>(LARGEST_PAINT);
  await session.detach();
  return { milliseconds, kilobytes: bytes / 1024 };
}

async function main(): Promise<void> {
  const service = await startDemoService('2026-11-25');
  const browser = await chromium.launch({
    executablePath: process.env.TRAYBOOK_CHROMIUM ?? '/usr/bin/chromium',
    args: ['--headless', '--no-sandbox', '--disable-gpu', '--disable-background-networking'],
  });
  try {
    const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
    const [owner] = PEOPLE;
    await context.request.post(`${service.url}/api/session`, {
      data: { signInName: owner?.signInName, password: owner?.password },
    });
    const first = await context.newPage();
    await first.goto(`${service.url}/today`, { waitUntil: 'networkidle' });
    await first.close();
    for (const screen of SCREENS) {
      const runs: Painted[] = [];
      for (let i = 0; i < 3; i += 1) {
        const page = await context.newPage();
        runs.push(await paint(page, `${service.url}${screen}`));
        await page.close();
      }
      const best = Math.min(...runs.map((run) => run.milliseconds));
      const weight = Math.max(...runs.map((run) => run.kilobytes));
      const share = ((best / LIMIT) * 100).toFixed(0);
      const text = `${best.toFixed(0)} ms (${share} % of the limit)  ${weight.toFixed(0)} kB of script`;
      console.log(`${screen.padEnd(12)} ${text}`);
    }
  } finally {
    await browser.close();
    await service.stop();
  }
}

await main();
