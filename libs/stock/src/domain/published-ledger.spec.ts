import { describe, expect, it } from '@jest/globals';
import {
  formatMoney,
  formatQuantity,
  type Money,
  money,
  type Quantity,
  quantity,
} from '#lib/measure';
import { candidate } from './candidate.fixture.js';
import type { Candidate } from './candidate.js';
import { chooseStock } from './choose-stock.js';

// OpenStax, Principles of Accounting, Volume 1: Financial Accounting (2019), chapter 10.3: the same
// month of purchases and sales, costed first in, first out and by the lot chosen for each sale.
// (The alt text of one figure gives a closing value of 8,895 for the first; the running text and the
// arithmetic give 8,955.) The last case is exercise A of the same chapter, its answers computed.

/** A shelf that buys and issues through the same choice of stock as a visit. */
class Shelf {
  private readonly lots: Candidate[] = [];

  buy(lot: string, units: string, unitCost: string, day: string): void {
    const landedCost = money(String(Number(units) * Number(unitCost)));
    const all = { onHand: quantity(units), received: quantity(units), landedCost };
    this.lots.push(
      candidate({ holdingId: lot, lotNumber: lot, labelExpiry: null, receivedOn: day, ...all }),
    );
  }

  /** Answers what the issue cost. */
  issue(units: string, day: string, scanned: string[] = []): string {
    const plan = chooseStock(this.lots, {
      day,
      locationId: 'room',
      needs: [{ consumableId: 'paste', quantity: quantity(units) }],
      scanned: new Set(scanned),
      ifOpenedUseBy: () => null,
      newId: () => 'none is opened',
    });
    expect(plan.missing).toEqual([0n]);
    this.lots.forEach((lot, i) => {
      const onHand = plan.holdings.get(lot.holdingId) ?? lot.onHand;
      this.lots[i] = { ...lot, ...plan.layers.get(lot.layerId), onHand };
    });
    return formatMoney(plan.takes.reduce((sum, t) => sum + t.cost, 0n) as Money);
  }

  get closingValue(): string {
    return formatMoney(
      this.lots.reduce((sum, lot) => sum + lot.landedCost - lot.outCost, 0n) as Money,
    );
  }

  get closingLayers(): string[] {
    return this.lots
      .filter((lot) => lot.onHand > 0n)
      .map((lot) => {
        const value = lot.landedCost - lot.outCost;
        const each = (value * 1_000_000n) / lot.onHand;
        return `${formatQuantity(lot.onHand as Quantity)} at ${formatMoney(each as Money)}`;
      });
  }
}

function july(): Shelf {
  const shelf = new Shelf();
  shelf.buy('opening', '150', '21', '2019-07-01');
  return shelf;
}

describe('the published ledger of July', () => {
  it('first in, first out', () => {
    const shelf = july();
    expect(shelf.issue('120', '2019-07-05')).toBe('2520.00');
    shelf.buy('Jul 10', '225', '27', '2019-07-10');
    expect(shelf.issue('180', '2019-07-15')).toBe('4680.00');
    shelf.buy('Jul 25', '210', '33', '2019-07-25');
    expect(shelf.closingValue).toBe('8955.00');
    expect(shelf.closingLayers).toEqual(['75 at 27.00', '210 at 33.00']);
  });

  it('the lot chosen for each use', () => {
    const shelf = july();
    expect(shelf.issue('120', '2019-07-05', ['opening'])).toBe('2520.00');
    shelf.buy('Jul 10', '225', '27', '2019-07-10');
    const first = shelf.issue('20', '2019-07-15', ['opening']);
    const second = shelf.issue('160', '2019-07-15', ['Jul 10']);
    expect([first, second]).toEqual(['420.00', '4320.00']);
    shelf.buy('Jul 25', '210', '33', '2019-07-25');
    expect(shelf.closingValue).toBe('8895.00');
    expect(shelf.closingLayers).toEqual(['10 at 21.00', '65 at 27.00', '210 at 33.00']);
  });

  it('the exercise with two purchases and two sales', () => {
    const shelf = new Shelf();
    shelf.buy('opening', '800', '50', '2019-01-01');
    shelf.buy('bought', '600', '52', '2019-01-02');
    const sold = [shelf.issue('400', '2019-01-03'), shelf.issue('350', '2019-01-04')];
    expect(sold).toEqual(['20000.00', '17500.00']);
    expect(shelf.closingValue).toBe('33700.00');
  });
});
