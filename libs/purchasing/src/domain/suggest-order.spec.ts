import { describe, expect, it } from '@jest/globals';
import { quantity } from '#lib/measure';
import { cheapest, type Offer, suggestOrder } from './suggest-order.js';

const offer = (id: string, content: string, price: string | null): Offer => ({
  presentationId: id,
  name: `Pack ${id}`,
  supplierName: null,
  packContent: quantity(content),
  packPrice: price === null ? null : quantity(price),
});

describe('the offer to buy', () => {
  it('is the cheapest per stock unit, not per pack', () => {
    const offers = [offer('a', '5', '40'), offer('b', '20', '120'), offer('c', '1', '9')];
    expect(cheapest(offers)?.presentationId).toBe('b');
  });

  it('has a price if any has', () => {
    expect(cheapest([offer('a', '5', null), offer('b', '5', '900')])?.presentationId).toBe('b');
  });

  it('is the same one every day', () => {
    expect(cheapest([offer('b', '5', '40'), offer('a', '10', '80')])?.presentationId).toBe('a');
    expect(cheapest([offer('b', '5', null), offer('a', '10', null)])?.presentationId).toBe('a');
  });

  it('is nothing when there is none', () => {
    expect(cheapest([])).toBeUndefined();
  });
});

describe('how much to order', () => {
  const order = (position: string, at: string, upTo: string | null, content = '5') =>
    suggestOrder(
      {
        position: quantity(position),
        reorderAt: quantity(at),
        reorderUpTo: upTo === null ? null : quantity(upTo),
      },
      [offer('a', content, '80')],
    )?.packs;

  it.each([
    ['4', '5', '15', 3n],
    ['5', '5', '15', 2n],
    ['5.000001', '5', '15', undefined],
    ['-2', '5', '15', 4n],
    ['5', '5', null, 1n],
    ['1', '5', null, 1n],
    ['0', '0', '0', 1n],
  ])('from %s, reordering at %s up to %s: %s packs', (position, at, upTo, packs) => {
    expect(order(position, at, upTo)).toBe(packs);
  });
});
