import { setImmediate as othersFirst } from 'node:timers/promises';

/** Long reckoning lets other requests go first whenever it has worked for so long. */
const TURN_MS = 4;

/** Asked between the steps of a long reckoning. */
export class Turns {
  private since = performance.now();

  async next(): Promise<void> {
    if (performance.now() - this.since < TURN_MS) return;
    await othersFirst();
    this.since = performance.now();
  }

  /** Takes a reckoning step by step, others going first in between. */
  async through<T>(steps: Generator<void, T>): Promise<T> {
    for (;;) {
      const step = steps.next();
      if (step.done === true) return step.value;
      await this.next();
    }
  }
}
