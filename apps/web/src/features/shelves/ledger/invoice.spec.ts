import { describe, expect, it } from '@jest/globals';
import type { Delivery, DeliveryLine } from '../api/get-delivery.js';
import { invoiceBody, invoicedLines } from './invoice.js';

const line = (lineNumber: number, change: Partial<DeliveryLine> = {}) =>
  ({
    ...{ lineNumber, packPrice: '10.00', sample: false, undone: false },
    ...{ continuesLine: null, kit: null, ...change },
  }) as DeliveryLine;

const kit = (firstLine: number) => ({
  ...{ kitLotId: 'k', lotNumber: null, firstLine, packPrice: '100.00' },
});

const delivery = {
  ...{ freight: '6.90', duty: '0.00', discount: '0.00' },
  lines: [
    ...[line(1), line(2, { kit: kit(2) }), line(3, { kit: kit(2) }), line(4, { sample: true })],
    ...[line(5, { undone: true }), line(6, { continuesLine: 1 })],
  ],
} as unknown as Delivery;

describe('an invoice that comes later', () => {
  it('has a price for each line that was paid for, a kit once', () => {
    expect(invoicedLines(delivery).map(({ lineNumber }) => lineNumber)).toEqual([1, 2]);
  });

  it('says only what differs', () => {
    const typed = { price1: '10', price2: '101,5', freight: '6,90', duty: '0', discount: '1' };
    expect(invoiceBody({ ...typed, reference: ' R-1 ' }, delivery)).toEqual({
      ...{ lines: [{ lineNumber: 2, packPrice: '101.5' }], discount: '1', reference: 'R-1' },
    });
  });
});
