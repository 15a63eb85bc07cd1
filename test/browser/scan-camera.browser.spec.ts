import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, it } from '@jest/globals';
import bwip from 'bwip-js/node';
import { chromium } from 'playwright-core';
import { deliveryLine, openSmallBook, type SmallBook } from '../book/book.js';
import { TestBrowser } from './harness/browser.js';
import {
  eventually,
  expectAccessible,
  FixedClock,
  shot,
  signIn,
  startWebService,
  TODAY,
  type WebService,
} from './harness/index.js';

const GTIN = '09521234543213';
const WIDTH = 640;
const HEIGHT = 480;

let folder: string;
let browser: TestBrowser;
let web: WebService;
let book: SmallBook;

/** A film of one still picture, a GS1 DataMatrix on a grey ground, as YUV4MPEG2 (4:2:0). */
function film(text: string): Buffer {
  const [symbol] = bwip.raw({ bcid: 'gs1datamatrix', text });
  if (!symbol || !('pixs' in symbol)) throw new Error('The writer made no matrix');
  const { pixs, pixx, pixy } = symbol;
  const module = 10;
  const [left, top] = [(WIDTH - pixx * module) / 2, (HEIGHT - pixy * module) / 2];
  const light = Buffer.alloc(WIDTH * HEIGHT, 200);
  for (let y = 0; y < HEIGHT; y += 1) {
    for (let x = 0; x < WIDTH; x += 1) {
      const column = Math.floor((x - left) / module);
      const row = Math.floor((y - top) / module);
      const inside = column >= 0 && column < pixx && row >= 0 && row < pixy;
      if (inside && pixs[row * pixx + column] === 1) light[y * WIDTH + x] = 40;
    }
  }
  const colour = Buffer.alloc((WIDTH * HEIGHT) / 2, 128);
  const frame = Buffer.concat([Buffer.from('FRAME\n'), light, colour]);
  const head = Buffer.from(`YUV4MPEG2 W${WIDTH} H${HEIGHT} F10:1 Ip A1:1 C420mpeg2\n`);
  return Buffer.concat([head, frame, frame]);
}

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'traybook-camera-'));
  const file = join(folder, 'label.y4m');
  writeFileSync(file, film(`(01)${GTIN}(17)270630(10)P-7`));
  const args = [
    ...['--headless', '--no-sandbox', '--disable-gpu', '--disable-background-networking'],
    ...['--use-fake-ui-for-media-stream', '--use-fake-device-for-media-stream'],
    `--use-file-for-fake-video-capture=${file}`,
  ];
  const executablePath = process.env.TRAYBOOK_CHROMIUM ?? '/usr/bin/chromium';
  browser = new TestBrowser(await chromium.launch({ executablePath, args }));
  web = await startWebService({ clock: new FixedClock(TODAY) });
  book = await openSmallBook(web.service, 'mill');
  const { paste, room, supplier } = book;
  await book.book.deliver(supplier, '2026-02-02', [
    deliveryLine(paste, room, 2, '72', { lotNumber: 'P-7', expiresOn: '2027-06-30' }),
  ]);
  await book.book.done('PATCH', `/presentations/${paste.presentation}`, { deviceIdentifier: GTIN });
});

afterEach(() => browser.closePages());

afterAll(async () => {
  await browser.close();
  await web.stop();
  rmSync(folder, { recursive: true });
});

describe('the camera', () => {
  it('reads a label, with a reader of our own service and under its content policy', async () => {
    const page = await browser.open({ width: 820, height: 1180 });
    await signIn(page, web.url, 'mill.manager');
    const loaded: string[] = [];
    page.on('request', (request) => loaded.push(request.url()));
    await page.goto(`${web.url}/shelves/deliveries/new`);
    await page.getByRole('button', { name: 'Scan with the camera' }).waitFor();
    expect(loaded.filter((url) => url.endsWith('.wasm'))).toEqual([]);
    await page.getByRole('button', { name: 'Scan with the camera' }).click();
    await page.getByText('lot P-7, expires 30 Jun 2027').waitFor();
    await eventually(() => page.getByRole('dialog').count(), 0);
    expect(await page.getByLabel('Lot number').inputValue()).toBe('P-7');
    expect(await page.getByLabel('Packs').inputValue()).toBe('1');
    const readers = loaded.filter((url) => url.endsWith('.wasm'));
    expect(readers).toHaveLength(1);
    expect(loaded.filter((url) => !url.startsWith(web.url))).toEqual([]);
    await shot(page, 'scan-camera');
    await expectAccessible(page);
  });
});
