import { describe, expect, it } from '@jest/globals';
import { quantity } from '#lib/measure';
import { cheapest, type Offer, suggestOrder } from './suggest-order.js';
import { reorderAlert, type SupplyFacts, shortfallAlert } from './supply-alerts.js';

const offer = (id: string, content: string, price: string | null): Offer => ({
  presentationId: id,
  name: `Pack ${id}`,
  supplierName: null,
  packContent: quantity(content),
  packPrice: price === null ? null : quantity(price),
});

const facts: SupplyFacts = {
  consumable: {
    id: 'c1',
    name: 'Adhesive',
    category: 'adhesive',
    shade: null,
    size: null,
    grit: null,
    unit: 'mL',
  },
  usable: quantity('4'),
  openShortfall: 0n,
  onOrder: 0n,
  reorderAt: quantity('5'),
  reorderUpTo: quantity('15'),
  offers: [offer('a', '5', '80')],
};

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

describe('the reorder alert', () => {
  it('counts what is on order as if it were there', () => {
    expect(reorderAlert({ ...facts, onOrder: quantity('2') }, 'EUR')).toBeUndefined();
    const still = reorderAlert({ ...facts, onOrder: quantity('0.5') }, 'EUR');
    expect(still?.sentence).toContain('4 mL of Adhesive usable, and 0.5 mL on order, is not more');
    expect(still?.figures.slice(0, 4)).toEqual([
      { name: 'usable', value: '4', unit: 'mL' },
      { name: 'on order', value: '0.5', unit: 'mL' },
      { name: 'open shortfall', value: '0', unit: 'mL' },
      { name: 'position', value: '4.5', unit: 'mL' },
    ]);
  });

  it('explains itself with its numbers', () => {
    expect(reorderAlert({ ...facts, openShortfall: quantity('0.5') }, 'EUR')).toMatchObject({
      id: 'below-reorder-point:c1',
      sentence:
        '4 mL of Adhesive usable, less 0.5 mL owed to visits, is not more than ' +
        'the reorder point of 5 mL. Order 3 packs of Pack a.',
      figures: [
        { name: 'usable', value: '4', unit: 'mL' },
        { name: 'open shortfall', value: '0.5', unit: 'mL' },
        { name: 'position', value: '3.5', unit: 'mL' },
        { name: 'reorder at', value: '5', unit: 'mL' },
        { name: 'reorder up to', value: '15', unit: 'mL' },
        { name: 'suggested packs', value: '3', unit: 'packs' },
        { name: 'last price', value: '80.00', unit: 'EUR' },
        { name: 'order cost', value: '240.00', unit: 'EUR' },
      ],
    });
  });

  it('is silent above the reorder point', () => {
    expect(reorderAlert({ ...facts, usable: quantity('5.1') }, 'EUR')).toBeUndefined();
  });

  it('says so when nobody knows how it is bought', () => {
    expect(reorderAlert({ ...facts, offers: [] }, 'EUR')?.sentence).toContain('No presentation');
  });

  it('puts what has run out before what runs low', () => {
    const low = reorderAlert(facts, 'EUR');
    const out = reorderAlert({ ...facts, usable: 0n }, 'EUR');
    expect(out && low && out.urgency < low.urgency).toBe(true);
  });
});

it('a shortfall is told with its visits and first day', () => {
  const alert = shortfallAlert(
    {
      consumable: facts.consumable,
      open: quantity('0.3'),
      visits: 2,
      oldest: '2026-05-04',
      estimatedCost: quantity('4.8'),
    },
    'EUR',
  );
  expect(alert.sentence).toBe(
    '2 visits used 0.3 mL of Adhesive that the book has no stock for, first on 2026-05-04. ' +
      'Book the delivery it came with, or count.',
  );
  expect(alert.figures[2]).toEqual({ name: 'estimated cost', value: '4.80', unit: 'EUR' });
});
