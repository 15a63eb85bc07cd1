import { describe, expect, it } from '@jest/globals';
import { money, quantity } from '#lib/measure';
import { capsuleOffer } from './example-items.js';
import { type ProductAttributes, substitutesFor } from './substitutes.js';

const body2: ProductAttributes = {
  itemId: 'body-2',
  name: 'Meadow paste',
  category: 'composite',
  unit: 'g',
  shade: 'Body 2',
  opacity: 'medium',
  viscosity: 'firm',
  size: null,
  grit: null,
};

const shade = (itemId: string, name: string, spare: string, change = {}) => ({
  attributes: { ...body2, itemId, shade: name, ...change },
  spare: quantity(spare),
  offers: [],
});

describe('substitutes', () => {
  it('are other pack sizes, the cheapest per unit first', () => {
    const ordered = capsuleOffer({ offerId: 'box-20' });
    const offers = [
      ordered,
      capsuleOffer({ offerId: 'same-size' }),
      capsuleOffer({ offerId: 'unpriced', packContent: quantity('30'), tiers: [] }),
      capsuleOffer({ offerId: 'single', packContent: quantity('1'), tiers: tier('4.10') }),
      capsuleOffer({ offerId: 'case', packContent: quantity('200'), tiers: tier('380') }),
    ];
    const found = substitutesFor(body2, ordered, offers, []);
    expect(found.map((s) => s.kind === 'another pack' && s.offerId)).toEqual([
      'case',
      'single',
      'unpriced',
    ]);
    expect(found[0]).toMatchObject({ packPrice: money('380'), needsConsent: true });
    expect(found[2]).toMatchObject({ packPrice: null });
  });

  it('are other shades of the same product only, the one with most to spare first', () => {
    const others = [
      shade('body-3', 'Body 3', '2'),
      shade('dentine-3', 'Dentine 3', '5'),
      shade('body-2', 'Body 2', '9'),
      shade('twin', ' body 2', '9'),
      shade('soft', 'Body 1', '9', { viscosity: 'flowable' }),
      shade('opaque', 'Body 1', '9', { opacity: 'high' }),
      shade('other', 'Body 1', '9', { name: 'Harbour paste' }),
      shade('none', 'Body 4', '0'),
      { ...shade('buyable', 'Body 5', '0'), offers: [capsuleOffer({ offerId: 'b5' })] },
    ];
    const found = substitutesFor(body2, null, [], others);
    expect(found.map((s) => s.itemId)).toEqual(['dentine-3', 'body-3', 'buyable']);
    expect(found.every((s) => s.needsConsent)).toBe(true);
    expect(found.at(-1)).toMatchObject({ shade: 'Body 5', offerIds: ['b5'] });
    expect(substitutesFor(body2, null, [], [...others].reverse())).toEqual(found);
    expect(substitutesFor({ ...body2, shade: null }, null, [], others)).toEqual([]);
  });
});

function tier(price: string) {
  return [{ fromPacks: 1n, packPrice: money(price) }];
}
