import { describe, expect, it } from '@jest/globals';
import { SignInThrottle } from './sign-in-throttle.js';

const MINUTE = 60_000;

describe('the sign-in throttle', () => {
  it('lets ten tries through in a quarter of an hour, then says how long to wait', () => {
    const throttle = new SignInThrottle();
    for (let n = 0; n < 10; n += 1) expect(throttle.begin('a', n * MINUTE)).toBe(0);
    expect(throttle.begin('a', 10 * MINUTE)).toBe(5 * 60);
    expect(throttle.begin('b', 10 * MINUTE)).toBe(0);
    expect(throttle.begin('a', 15 * MINUTE)).toBe(0);
    expect(throttle.begin('a', 15 * MINUTE)).toBe(60);
  });

  it('does not count tries that it refused', () => {
    const throttle = new SignInThrottle(1, MINUTE);
    expect(throttle.begin('a', 0)).toBe(0);
    for (let second = 1; second < 60; second += 1) {
      expect(throttle.begin('a', second * 1000)).toBe(60 - second);
    }
    expect(throttle.begin('a', MINUTE)).toBe(0);
  });

  it('forgets failures after a success', () => {
    const throttle = new SignInThrottle(2, MINUTE);
    throttle.begin('a', 0);
    throttle.begin('a', 0);
    throttle.succeeded('a');
    expect(throttle.begin('a', 1)).toBe(0);
  });

  it('remembers a bounded number of keys, the latest ones', () => {
    const throttle = new SignInThrottle(1, MINUTE, 2);
    for (const key of ['a', 'b', 'c']) throttle.begin(key, 0);
    expect(throttle.begin('c', 1)).toBeGreaterThan(0);
    expect(throttle.begin('a', 1)).toBe(0);
  });
});
