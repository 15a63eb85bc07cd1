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
    ...{ deviceIdentifier: null, articleCode: null, listPrice: null },
  },
};

const line = (change: Partial<Line> = {}): Line => ({
  ...emptyLine('k1', 'p1'),
  ...{ product, packs: '3', packPrice: '72,50', lotNumber: ' P-7 ', expiresOn: '2027-06-30' },
  ...change,
});

const form = (change: Partial<Values> = {}): Values => ({
  ...{
    supplierId: 's1',
    receivedOn: '2026-05-04',
    reference: '',
    freight: '',
    duty: '',
    discount: '',
  },
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

  it('tells of lots, kits, weights, samples and what came damaged or not at all', () => {
    const lots = [
      { key: 'l1', packs: '2', lotNumber: 'A', expiresOn: '2028-01-31' },
      { key: 'l2', packs: '1', lotNumber: '', expiresOn: '' },
    ];
    const several = line({ key: 'k2', lots, weight: '12,5', damaged: '1', damagedLot: ' A ' });
    const sample = line({ key: 'k3', packPrice: '0', sample: true, missing: '2' });
    const parts = { c2: { lotNumber: 'C-1', expiresOn: '' }, c3: { lotNumber: '', expiresOn: '' } };
    const gone = line({ key: 'k4', packs: '', missing: '1', orderLineId: 'o1', ordered: 1 });
    const sent = bodyOf(form({ duty: '3', lines: [several, sample, line({ parts }), gone] }));
    expect(sent.duty).toBe('3');
    expect(sent.lines).toMatchObject([
      {
        weightGrams: '12.5',
        lots: [{ packs: 2, lotNumber: 'A', expiresOn: '2028-01-31' }, { packs: 1 }],
      },
      { sample: true, packPrice: '0' },
      { parts: [{ consumableId: 'c2', lotNumber: 'C-1' }] },
    ]);
    expect(sent.lines[0]).not.toHaveProperty('lotNumber');
    expect(sent.faults).toEqual([
      { presentationId: 'x1', kind: 'damaged', packs: 1, lotNumber: 'A' },
      { presentationId: 'x1', kind: 'missing', packs: 2 },
      { presentationId: 'x1', kind: 'missing', packs: 1, orderLineId: 'o1' },
    ]);
  });

  it('leaves out what is still to come of an order', () => {
    const waiting = line({
      packs: '',
      lotNumber: '',
      expiresOn: '',
      orderLineId: 'o1',
      ordered: 2,
    });
    const came = line({ key: 'k2', orderLineId: 'o2', ordered: 3 });
    expect(bodyOf(form({ lines: [waiting, came] })).lines).toMatchObject([{ orderLineId: 'o2' }]);
  });

  it('keeps one line to complain about', () => {
    const [first, second] = [emptyLine('k1', 'p1'), emptyLine('k2', 'p1')];
    expect(written([first, second])).toEqual([first]);
    expect(written([line(), second]).map(({ key }) => key)).toEqual(['k1']);
  });
});
