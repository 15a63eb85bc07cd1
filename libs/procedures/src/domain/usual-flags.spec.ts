import { describe, expect, it } from '@jest/globals';
import { isUsuallyAnaesthetic, usuallySharesDose } from './usual-flags.js';

describe('what is usual for a category', () => {
  it.each([
    ['Composite', true],
    ['Flowable composite', true],
    ['Adhesive', true],
    ['Ätzgel', true],
    ['Anaesthetic', true],
    ['Glass ionomer cement', false],
    ['Adhesive cement', false],
    ['Zement', false],
    ['Needles', false],
    ['Discs', false],
    ['any', false],
  ])('one dose of %s may serve several restorations: %s', (category, shared) => {
    expect(usuallySharesDose(category)).toBe(shared);
  });

  it.each([
    ['Anaesthetic', true],
    ['anesthesia', true],
    ['Anästhesie', true],
    ['Needles', true],
    ['Composite', false],
    ['Isolation', false],
  ])('%s is there for anaesthesia: %s', (category, is) => {
    expect(isUsuallyAnaesthetic(category)).toBe(is);
  });
});
