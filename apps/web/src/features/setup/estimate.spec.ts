import { describe, expect, it } from '@jest/globals';
import { formatMoney } from '#lib/measure';
import type { PriceBook } from './api/list-prices.js';
import type { PreviewLine } from './api/preview-template.js';
import { costsOf, estimateOf, pricesOf } from './estimate.js';

type Stock = PriceBook['stock'][number];
type Presentation = PriceBook['presentations'][number];

function stock(id: string, usable: string, value: string, blocked = '0'): Stock {
  return {
    consumable: {
      id,
      name: id,
      category: 'x',
      shade: null,
      size: null,
      grit: null,
      unit: 'g',
    },
    usable,
    blocked,
    value,
    openedContainers: 0,
    earliestExpiry: null,
    reorderAt: null,
    openShortfall: '0',
  };
}

function pack(consumableId: string, change: Partial<Presentation> = {}): Presentation {
  return {
    id: `p-${consumableId}`,
    consumableId,
    supplierId: null,
    name: 'Pack',
    dispensing: 'multi-use',
    containersPerPack: 1,
    contentPerContainer: '4',
    deviceIdentifier: null,
    articleCode: null,
    listPrice: '72.00',
    active: true,
    ...change,
  };
}

function line(consumableId: string, dispensed: string): PreviewLine {
  return {
    key: consumableId,
    restoration: null,
    tooth: null,
    attempt: 1,
    consumableId,
    consumableName: consumableId,
    shade: null,
    stockUnit: 'g',
    driver: 'restoration',
    placed: '0',
    dispensed,
    sharesDose: false,
  };
}

function cost(book: PriceBook, of: PreviewLine): string | undefined {
  const [found] = costsOf([of], pricesOf(book));
  return found === undefined ? undefined : formatMoney(found);
}

describe('what a planned line costs', () => {
  it('goes by what the stock on hand cost', () => {
    const book = { stock: [stock('paste', '3', '60', '1')], presentations: [pack('paste')] };
    expect(cost(book, line('paste', '0.06'))).toBe('0.90');
  });

  it('goes by the list price when nothing is on hand', () => {
    const book = { stock: [stock('paste', '0', '0')], presentations: [pack('paste')] };
    expect(cost(book, line('paste', '0.06'))).toBe('1.08');
  });

  it('charges whole single doses', () => {
    const capsule = { dispensing: 'single-dose', contentPerContainer: '0.25' } as const;
    const presentations = [pack('k', { ...capsule, containersPerPack: 20, listPrice: '110' })];
    expect(cost({ stock: [], presentations }, line('k', '0.1'))).toBe('5.50');
    expect(cost({ stock: [], presentations }, line('k', '0.26'))).toBe('11.00');
    const mixed = [...presentations, pack('k', { id: 'other', listPrice: null })];
    expect(cost({ stock: [], presentations: mixed }, line('k', '0.1'))).toBe('2.20');
  });

  it('charges a dose that lines share once, by what each takes out of it', () => {
    const capsule = { dispensing: 'single-dose', contentPerContainer: '0.25' } as const;
    const presentations = [pack('k', { ...capsule, containersPerPack: 20, listPrice: '110' })];
    const lines = ['0.06', '0.12'].map((out) => ({ ...line('k', out), sharesDose: true }));
    const prices = pricesOf({ stock: [], presentations });
    const costs = costsOf([...lines, line('k', '0.06')], prices);
    expect(costs.map((each) => each && formatMoney(each))).toEqual([
      '1.833326',
      '3.666674',
      '5.50',
    ]);
  });

  it('is unknown without any price, and a total says for how many', () => {
    const presentations = [pack('paste'), pack('wedge', { listPrice: null })];
    const lines = [line('paste', '0.06'), line('wedge', '1'), line('strip', '1')];
    const { total, unknown } = estimateOf(lines, pricesOf({ stock: [], presentations }));
    expect([formatMoney(total), unknown]).toEqual(['1.08', 2]);
  });
});
