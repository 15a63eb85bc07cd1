import { setImmediate as othersFirst } from 'node:timers/promises';

/** Long reckoning lets other requests go first whenever it has worked for so long. */
const TURN_MS = 10;

/** Asked between the steps of a long reckoning. */
export class Turns {
  private since = performance.now();

  async next(): Promise<void> {
    if (performance.now() - this.since < TURN_MS) return;
    await othersFirst();
    this.since = performance.now();
  }
}
