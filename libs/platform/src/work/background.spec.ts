import { describe, expect, it } from '@jest/globals';
import { BackgroundWork } from './background.js';

const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

async function until(isSo: () => boolean): Promise<void> {
  for (let tries = 0; tries < 1000 && !isSo(); tries += 1) await pause(5);
  expect(isSo()).toBe(true);
}

describe('background work', () => {
  it('does nothing before it is started', async () => {
    const work = new BackgroundWork();
    let turns = 0;
    work.add('counting', 0, async () => {
      turns += 1;
      return false;
    });
    await pause(20);
    expect(turns).toBe(0);
    await work.beforeApplicationShutdown();
  });

  it('never runs a job beside itself, goes on after a failure, and soon when there is more', async () => {
    const work = new BackgroundWork();
    let [turns, inside, most] = [0, 0, 0];
    work.add('counting', 0.01, async () => {
      inside += 1;
      most = Math.max(most, inside);
      await pause(15);
      inside -= 1;
      turns += 1;
      if (turns === 2) return Promise.reject(new Error('expected by this test'));
      return turns < 4;
    });
    work.start();
    await until(() => turns >= 6);
    await work.beforeApplicationShutdown();
    expect(most).toBe(1);
  });

  it('ends what is running before the service stops, and begins nothing new', async () => {
    const work = new BackgroundWork();
    let [begun, ended] = [0, 0];
    work.add('slow', 0, async () => {
      begun += 1;
      await pause(30);
      ended += 1;
      return true;
    });
    work.start();
    await until(() => begun === 1);
    await work.beforeApplicationShutdown();
    expect([begun, ended]).toEqual([1, 1]);
    await pause(150);
    expect(begun).toBe(1);
  });
});
