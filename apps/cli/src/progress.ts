import type { WriteStream } from 'node:tty';

const WIDTH = 30;

/** A bar on one line of a terminal; elsewhere a line for about every tenth. */
export class Progress {
  private lastTenth = -1;

  constructor(private readonly out: WriteStream = process.stdout) {}

  show(done: number, total: number, what: string): void {
    const share = total > 0 ? Math.min(1, done / total) : 0;
    const percent = `${Math.floor(share * 100)}`.padStart(3);
    if (this.out.isTTY) {
      const filled = Math.round(share * WIDTH);
      const bar = '#'.repeat(filled) + '.'.repeat(WIDTH - filled);
      const line = `[${bar}] ${percent} %  ${what}`;
      this.out.write(`\r${line.slice(0, Math.max(20, this.out.columns - 1))}\x1b[K`);
      return;
    }
    const tenth = Math.floor(share * 10);
    if (tenth === this.lastTenth) return;
    this.lastTenth = tenth;
    this.out.write(`${percent} %  ${what}\n`);
  }

  end(): void {
    if (this.out.isTTY) this.out.write('\r\x1b[K');
  }
}
