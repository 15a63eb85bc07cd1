import { expect, it } from '@jest/globals';
import { drawnShare, micro } from './drawn.js';

it('reads decimals exactly, and makes floats only of shares', () => {
  expect(micro('0.1') + micro('0.2')).toBe(micro('0.3'));
  expect(drawnShare(micro('1'), micro('4'))).toBe(0.25);
  expect(drawnShare(micro('1'), 0n)).toBe(0);
});
