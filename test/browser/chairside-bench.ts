import type { Page } from 'playwright-core';
import { deliveryLine, openSmallBook, type SmallBook } from '../book/book.js';
import {
  FixedClock,
  openBrowser,
  signIn,
  startWebService,
  type TestBrowser,
  TODAY,
  type WebService,
} from './harness/index.js';

interface Booked {
  readonly id: string;
  readonly materialCost: string;
  readonly restorations: string;
  readonly reversed: boolean;
}

async function fillShelves({ book, ...s }: SmallBook): Promise<void> {
  const line = (
    of: Parameters<typeof deliveryLine>[0],
    at: string,
    packs: number,
    price: string,
    lotNumber: string,
    expiresOn = '2027-05-31',
  ) => deliveryLine(of, at, packs, price, { lotNumber, expiresOn });
  await book.deliver(s.supplier, '2026-01-12', [
    line(s.etchant, s.store, 4, '20', 'E-1'),
    line(s.adhesive, s.store, 2, '110', 'A-1'),
    line(s.paste, s.room, 2, '72', 'P-1'),
    line(s.paste, s.store, 1, '76', 'P-2', '2028-05-31'),
    line(s.paste, s.store, 1, '76', 'P-0', '2026-03-31'),
    line(s.capsule, s.store, 1, '110', 'K-1'),
    line(s.strip, s.room, 5, '9', 'S-1'),
    line(s.bib, s.store, 1, '25', 'B-1'),
  ]);
}

/** A service with full shelves, and the steps that a person takes at the chair. */
export class ChairsideBench {
  private chart = 1000;
  /** The chart reference of the test. */
  reference = '';

  private constructor(
    readonly browser: TestBrowser,
    readonly web: WebService,
    readonly book: SmallBook,
  ) {}

  static async start(): Promise<ChairsideBench> {
    const [browser, web] = await Promise.all([
      openBrowser(),
      startWebService({ clock: new FixedClock(TODAY) }),
    ]);
    const book = await openSmallBook(web.service, 'mill');
    await fillShelves(book);
    return new ChairsideBench(browser, web, book);
  }

  async stop(): Promise<void> {
    await this.browser.close();
    await this.web.stop();
  }

  nextChart(): void {
    this.chart += 1;
    this.reference = `C-${this.chart}`;
  }

  /** What the book knows of the chart of this test. */
  async inTheBook(): Promise<readonly Booked[]> {
    const path = `/visits?chartReference=${this.reference}`;
    return (await this.book.book.done<{ items: Booked[] }>('GET', path)).items;
  }

  async open(options: Parameters<TestBrowser['open']>[0] = {}, role = 'assistant'): Promise<Page> {
    // Whoever enters slowly has half a restoration asked about: the service says what is missing.
    const refusals = [422, ...(options.refusals ?? [])];
    const page = await this.browser.open({ ...options, refusals });
    await signIn(page, this.web.url, `mill.${role}`);
    if (!page.url().includes('/chairside')) await page.goto(`${this.web.url}/chairside`);
    await page.getByLabel('Chart reference').waitFor();
    return page;
  }

  /** Everything but the posting: one side of tooth 21. */
  async enter(page: Page, template = 'Front tooth composite'): Promise<void> {
    await page.getByLabel('Chart reference').fill(this.reference);
    await page.getByLabel('Dentist').selectOption({ label: 'mill.dentist' });
    await page.getByLabel('Room').selectOption({ label: 'Room 1' });
    await button(page, '21, upper left central incisor').click();
    await page.getByRole('checkbox', { name: 'Mesial' }).click();
    await page.getByRole('radio', { name: 'Decay' }).check();
    await page.getByLabel('How it is made').selectOption({ label: template });
    if (template !== 'Front tooth composite') return;
    await page.getByRole('checkbox', { name: /^Body 2/ }).check();
    await button(page, /^Paste, Body 2 \d/).waitFor();
  }

  async booked(page: Page): Promise<void> {
    await page.getByRole('heading', { name: `${this.reference} is booked` }).waitFor();
  }
}

export const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name });
export const card = (page: Page, name: string) => page.getByRole('region', { name, exact: true });
export const post = (page: Page) => button(page, /^(Book|Keep) the visit$/).click();

/** Chromium writes every request that gets no answer to its console. */
export async function loseNetwork(page: Page): Promise<void> {
  page.removeAllListeners('console');
  await page.context().setOffline(true);
}
