import { expect, it } from '@jest/globals';
import { quantity } from '#lib/measure';
import { shortfallAlert } from './shortfall-alert.js';

it('a shortfall is told with its visits and first day', () => {
  const alert = shortfallAlert(
    {
      consumable: {
        id: 'c1',
        name: 'Adhesive',
        category: 'adhesive',
        shade: null,
        size: null,
        grit: null,
        unit: 'mL',
      },
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
