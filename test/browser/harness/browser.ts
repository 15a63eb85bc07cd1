import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';

const EXECUTABLE = process.env.TRAYBOOK_CHROMIUM ?? '/usr/bin/chromium';
/** So many times slower than this machine: shows what a test or a screen takes for granted. */
const SLOW = Number(process.env.TRAYBOOK_SLOW ?? '1');
const ARGS = ['--headless', '--no-sandbox', '--disable-gpu', '--disable-background-networking'];

export interface PageOptions {
  /** 1440 or 820: a desk, or a tablet in portrait. */
  readonly width?: number;
  readonly height?: number;
  readonly colorScheme?: 'light' | 'dark';
  readonly locale?: string;
  /** Answers of the service that this test provokes, and that Chromium writes to its console. */
  readonly refusals?: readonly number[];
}

/** Chromium with pages that remember whatever they complained about. */
export class TestBrowser {
  private readonly complaints: string[] = [];
  private readonly contexts: BrowserContext[] = [];

  constructor(private readonly browser: Browser) {}

  async open(options: PageOptions = {}): Promise<Page> {
    const { width = 1440, height = 900, colorScheme = 'light', locale = 'en-GB' } = options;
    const context = await this.browser.newContext({
      viewport: { width, height },
      colorScheme,
      locale,
      timezoneId: 'Europe/Berlin',
      reducedMotion: 'reduce',
    });
    this.contexts.push(context);
    const page = await context.newPage();
    page.setDefaultTimeout(30_000);
    if (SLOW > 1) {
      const tools = await context.newCDPSession(page);
      await tools.send('Emulation.setCPUThrottlingRate', { rate: SLOW });
    }
    this.listen(page, options.refusals ?? []);
    return page;
  }

  private listen(page: Page, refusals: readonly number[]): void {
    page.on('pageerror', (error) => this.complaints.push(String(error)));
    page.on('console', (message) => {
      if (message.type() !== 'error' && message.type() !== 'warning') return;
      const text = message.text();
      const status = /^Failed to load resource: .* status of (\d+)/.exec(text)?.[1];
      if (status !== undefined && refusals.includes(Number(status))) return;
      this.complaints.push(`${message.type()}: ${text} (${message.location().url})`);
    });
  }

  /** Closes the pages of a test; throws when one of them wrote an error or a warning. */
  async closePages(): Promise<void> {
    await Promise.all(this.contexts.splice(0).map((context) => context.close()));
    const complaints = this.complaints.splice(0);
    if (complaints.length > 0) throw new Error(`The console says:\n${complaints.join('\n')}`);
  }

  close(): Promise<void> {
    return this.browser.close();
  }
}

export async function openBrowser(): Promise<TestBrowser> {
  return new TestBrowser(await chromium.launch({ executablePath: EXECUTABLE, args: ARGS }));
}
