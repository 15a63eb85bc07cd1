import { describe, expect, it } from '@jest/globals';
import { holdingWith } from '../holding/holding.fixture.js';
import { emptyLine, type Line, type Product } from './lines.js';
import { type ScannedPack, withScan } from './scanned.js';

const product = (id: string): Product => ({
  consumable: holdingWith().consumable,
  presentation: {
    ...{ id, consumableId: 'c1', supplierId: null, name: 'Syringe', active: true },
    ...{ dispensing: 'multi-use', containersPerPack: 1, contentPerContainer: '4' },
    ...{ deviceIdentifier: null, articleCode: null, listPrice: null },
  },
});

const pack = (change: Partial<ScannedPack> = {}): ScannedPack => ({
  ...{ product: product('x1'), lotNumber: 'P-7', expiresOn: '2027-06-30' },
  ...change,
});

function scanned(lines: readonly Line[], ...packs: ScannedPack[]) {
  const did: string[] = [];
  const end = packs.reduce((before, one, i) => {
    const scan = withScan(before, one, `new${i}`);
    did.push(scan.did);
    return scan.lines;
  }, lines);
  const rows = end.map((line) => [
    line.product?.presentation.id ?? null,
    line.packs,
    line.lotNumber,
    line.expiresOn,
  ]);
  return { did, rows };
}

const start = [emptyLine('k1', 'p1')];

describe('a scanned pack', () => {
  it('takes the place of the untouched line, with lot and expiry; the next one raises it', () => {
    expect(scanned(start, pack(), pack(), pack())).toEqual({
      ...{ did: ['added', 'raised', 'raised'], rows: [['x1', '3', 'P-7', '2027-06-30']] },
    });
    expect(withScan(start, pack(), 'n').lines[0]?.locationId).toBe('p1');
  });

  it('of another lot, day or product is another line', () => {
    const others = [
      pack({ lotNumber: 'P-8' }),
      pack({ expiresOn: '2028-01-31' }),
      pack({ product: product('x2') }),
    ];
    const { did, rows } = scanned(start, pack(), ...others);
    expect(did).toEqual(['added', 'added', 'added', 'added']);
    expect(rows).toHaveLength(4);
  });

  it('fills the line that was begun by hand', () => {
    const begun = [{ ...emptyLine('k1', 'p1'), product: product('x1') }];
    expect(scanned(begun, pack())).toEqual({
      ...{ did: ['lot'], rows: [['x1', '1', 'P-7', '2027-06-30']] },
    });
  });

  it('in two symbols: first the product, then lot and expiry', () => {
    const first = pack({ lotNumber: null, expiresOn: null });
    const second = pack({ product: null });
    expect(scanned(start, second)).toEqual({ did: ['nothing'], rows: [[null, '', '', '']] });
    expect(scanned(start, first, first, second, pack())).toEqual({
      did: ['added', 'raised', 'lot', 'raised'],
      rows: [['x1', '3', 'P-7', '2027-06-30']],
    });
  });

  it('answers the line of the order, and so does another lot of the same', () => {
    const asked = { product: product('x1'), orderLineId: 'o1', ordered: 5 };
    const start = [{ ...emptyLine('k1', 'p1'), ...asked }];
    const first = withScan(start, pack({ lotNumber: null, expiresOn: null }), 'n1');
    expect(first.lines.map((one) => [one.packs, one.orderLineId])).toEqual([['1', 'o1']]);
    const second = withScan(withScan(start, pack(), 'n1').lines, pack({ lotNumber: 'P-8' }), 'n2');
    expect(second.lines.map((one) => [one.packs, one.lotNumber, one.orderLineId])).toEqual([
      ['1', 'P-7', 'o1'],
      ['1', 'P-8', 'o1'],
    ]);
  });

  it('never writes over a lot, nor over "no lot"', () => {
    const typed = [{ ...emptyLine('k1', 'p1'), product: product('x1'), noLot: true, packs: '2' }];
    const { rows } = scanned(typed, pack());
    expect(rows).toEqual([
      ['x1', '2', '', ''],
      ['x1', '1', 'P-7', '2027-06-30'],
    ]);
  });
});
