import { describe, expect, it } from '@jest/globals';
import { holdingWith } from '../holding/holding.fixture.js';
import {
  bodyOf,
  broughtBy,
  emptyLine,
  type Line,
  moneyOf,
  type Product,
  packsOf,
  priceChange,
  totalsOf,
  type Values,
  written,
} from './lines.js';

const product: Product = {
  consumable: holdingWith().consumable,
  presentation: {
    ...{ id: 'x1', consumableId: 'c1', supplierId: null, name: 'Box of 20', active: true },
    ...{ dispensing: 'single-dose', containersPerPack: 20, contentPerContainer: '0.25' },
    ...{ deviceIdentifier: null, listPrice: null },
  },
};

const line = (change: Partial<Line> = {}): Line => ({
  ...emptyLine('k1', 'p1'),
  ...{ product, packs: '3', packPrice: '72,50', lotNumber: ' P-7 ', expiresOn: '2027-06-30' },
  ...change,
});

const form = (change: Partial<Values> = {}): Values => ({
  ...{ supplierId: 's1', receivedOn: '2026-05-04', reference: '', freight: '', discount: '' },
  ...{ spreadKey: 'value', lines: [line()] },
  ...change,
});

describe('a line of a delivery', () => {
  it('brings packs times containers times content', () => {
    expect(broughtBy(line())).toBe('15');
    expect(broughtBy(line({ packs: 'x' }))).toBeUndefined();
    expect(broughtBy(line({ product: null }))).toBeUndefined();
  });

  it('takes whole packs and prices from nothing upwards', () => {
    expect([packsOf('3'), packsOf(' 12 '), packsOf('0'), packsOf('1.5'), packsOf('')]).toEqual([
      ...[3, 12, undefined, undefined, undefined],
    ]);
    expect([moneyOf('0'), moneyOf('6,90'), moneyOf('-1'), moneyOf('x')]).toEqual([
      ...[0n, 6_900_000n, undefined, undefined],
    ]);
  });

  it('is measured against the last price', () => {
    expect(priceChange('81', '72')).toBe('0.125');
    expect(priceChange('72', '72.00')).toBe('0');
    expect(priceChange('36', '72')).toBe('-0.5');
    expect(priceChange('', '72')).toBeUndefined();
    expect(priceChange('5', '0')).toBeUndefined();
  });
});

describe('a delivery', () => {
  it('adds up while it is written', () => {
    expect(totalsOf(form({ freight: '6.90', discount: '10' }))).toEqual({
      ...{ goods: '217.50', landed: '214.40', discountTooLarge: false },
    });
    expect(totalsOf(form({ discount: '217.51' })).discountTooLarge).toBe(true);
    expect(totalsOf(form({ freight: 'x', lines: [line({ packs: '' })] })).landed).toBe('0.00');
  });

  it('is sent without what was not written', () => {
    const lines = [line(), line({ key: 'k2', noLot: true, expiresOn: '' }), emptyLine('k3', 'p1')];
    expect(bodyOf(form({ lines, freight: '6,90', reference: ' DN-1 ' }))).toEqual({
      ...{ supplierId: 's1', receivedOn: '2026-05-04', spreadKey: 'value' },
      ...{ reference: 'DN-1', freight: '6.90' },
      lines: [
        {
          ...{ presentationId: 'x1', packs: 3, packPrice: '72.50', locationId: 'p1' },
          ...{ lotNumber: 'P-7', expiresOn: '2027-06-30' },
        },
        { presentationId: 'x1', packs: 3, packPrice: '72.50', locationId: 'p1' },
      ],
    });
  });

  it('keeps one line to complain about', () => {
    const [first, second] = [emptyLine('k1', 'p1'), emptyLine('k2', 'p1')];
    expect(written([first, second])).toEqual([first]);
    expect(written([line(), second]).map(({ key }) => key)).toEqual(['k1']);
  });
});
