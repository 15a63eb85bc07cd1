import { describe, expect, it } from '@jest/globals';
import { quantity } from '#lib/measure';
import { en } from '../../text/en.js';
import { makeFormat } from '../../text/format.js';
import { packSentence, packTotal, unitPrice } from './pack-words.js';

const format = makeFormat({
  locale: 'en-GB',
  currency: 'EUR',
  timeZone: 'Europe/Berlin',
  units: en.units,
});

function words(
  dispensing: 'multi-use' | 'single-dose' | 'by-piece',
  containersPerPack: string,
  contentPerContainer: string,
  unit: string,
): string | undefined {
  const pack = { dispensing, containersPerPack, contentPerContainer };
  return packSentence(pack, unit, format, en)?.replaceAll('\u00a0', ' ');
}

describe('what is in a pack', () => {
  it('is written out in words', () => {
    expect(words('single-dose', '20', '0.25', 'g')).toBe(
      '1 pack = 20 single doses of 0.25 g = 5 g',
    );
    expect(words('multi-use', '1', '4', 'g')).toBe('1 pack = 1 container of 4 g');
    expect(words('multi-use', '2', '4.8', 'mL')).toBe('1 pack = 2 containers of 4.8 mL = 9.6 mL');
    expect(words('by-piece', '100', '1', 'piece')).toBe('1 pack = 100 pieces');
    expect(words('by-piece', '10', '50', 'piece')).toBe(
      '1 pack = 10 portions of 50 pieces = 500 pieces',
    );
  });

  it('says nothing about what is not a number yet', () => {
    expect(words('multi-use', '', '4', 'g')).toBeUndefined();
    expect(words('multi-use', '1', 'much', 'g')).toBeUndefined();
    expect(words('multi-use', '0', '4', 'g')).toBeUndefined();
  });
});

describe('the price of a unit', () => {
  it('is the list price over the content, to the millionth', () => {
    expect(unitPrice('110.00', quantity('5'))).toBe('22.00');
    expect(unitPrice('7', packTotal('3', '1'))).toBe('2.333333');
  });

  it('is unknown without a price or a content', () => {
    expect(unitPrice(null, quantity('5'))).toBeUndefined();
    expect(unitPrice('dear', quantity('5'))).toBeUndefined();
    expect(unitPrice('7', quantity('0'))).toBeUndefined();
    expect(unitPrice('7', undefined)).toBeUndefined();
  });
});
