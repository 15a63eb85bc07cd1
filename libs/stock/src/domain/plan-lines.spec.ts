import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { formatMoney, formatQuantity, money, quantity, quantityFromMicro } from '#lib/measure';
import { type Pack, type PlannedLine, planLines, type TypedLine } from './plan-lines.js';

const CENT = 10_000n;

const syringe: Pack = {
  ...{ consumableId: 'paste', dispensing: 'multi-use', containersPerPack: 2 },
  ...{ contentPerContainer: quantity('4'), parts: [] },
};

const part = (consumableId: string, share: string) => ({
  ...{ consumableId, dispensing: 'multi-use' as const, containersPerPack: 1 },
  ...{ contentPerContainer: quantity('0.45'), share: quantity(share) },
});

const kit: Pack = {
  ...syringe,
  containersPerPack: 1,
  parts: [part('acid', '0.25'), part('dry', '0.25')],
};

const typed = (change: Partial<TypedLine> = {}): TypedLine => ({
  ...{ presentationId: 'p', packs: 5, packPrice: money('10'), locationId: 'store' },
  ...{ orderLineId: 'o', sample: false, weight: quantity('100'), lots: [], parts: [] },
  ...{ lotNumber: 'A', expiresOn: '2028-01-31', ...change },
});

const noLot = { lotNumber: null, expiresOn: null };

function shown(lines: TypedLine[], pack: Pack) {
  const planned = planLines(lines, () => pack, CENT);
  if (!Array.isArray(planned)) return planned;
  return planned.map((one) =>
    [
      ...[one.field, one.consumableId, one.packs, formatMoney(one.packPrice)],
      ...[formatQuantity(one.quantity), formatQuantity(one.weight), one.lotNumber ?? '-'],
      one.orderLineId ?? '-',
    ].join(' '),
  );
}

describe('the layers of a line', () => {
  it('are one for a plain line', () => {
    expect(shown([typed()], syringe)).toEqual(['lines[0] paste 5 10.00 40 100 A o']);
  });

  it('are one for each lot that it came with', () => {
    const lots = [
      { lotNumber: 'A', expiresOn: '2028-01-31', packs: 3 },
      { ...noLot, packs: 2 },
    ];
    expect(shown([typed({ ...noLot, lots })], syringe)).toEqual([
      'lines[0].lots[0] paste 3 10.00 24 60 A o',
      'lines[0].lots[1] paste 2 10.00 16 40 - o',
    ]);
    expect(shown([typed({ ...noLot, lots, packs: 6 })], syringe)).toEqual({
      ...{ field: 'lines[0].lots', message: 'must add up to 6 packs, not 5' },
    });
    expect(shown([typed({ lots })], syringe)).toMatchObject({ field: 'lines[0].lotNumber' });
  });

  it('are one for each part of a kit, which has its own lot or goes by the number of the kit', () => {
    const parts = [{ consumableId: 'dry', lotNumber: 'D-9', expiresOn: null }];
    const line = typed({ packs: 2, packPrice: money('10.01'), parts });
    expect(shown([line], kit)).toEqual([
      'lines[0] paste 2 5.01 8 50 A o',
      'lines[0] acid 2 2.50 0.9 25 A -',
      'lines[0].parts[0] dry 2 2.50 0.9 25 D-9 -',
    ]);
  });

  it('are refused where a kit is none, a part is no part, or is named twice', () => {
    const parts = [{ consumableId: 'acid', ...noLot }];
    const at = (field: string) => ({ field });
    expect(shown([typed({ parts })], syringe)).toMatchObject(at('lines[0].parts[0].consumableId'));
    const other = [...parts, { consumableId: 'gloves', ...noLot }];
    expect(shown([typed({ parts: other })], kit)).toMatchObject(
      at('lines[0].parts[1].consumableId'),
    );
    const twice = [...parts, ...parts];
    expect(shown([typed({ parts: twice })], kit)).toMatchObject(
      at('lines[0].parts[1].consumableId'),
    );
    const lots = [{ ...noLot, packs: 5 }];
    expect(shown([typed({ ...noLot, lots })], kit)).toMatchObject(at('lines[0].lots'));
    expect(shown([typed({ sample: true })], kit)).toMatchObject(at('lines[0].packPrice'));
  });

  it('lose nothing of the price, the packs and the weight', () => {
    const shares = fc
      .array(fc.integer({ min: 0, max: 250_000 }), { maxLength: 4 })
      .map((all) =>
        all.map((share, i) => part(`c${i}`, formatQuantity(quantityFromMicro(BigInt(share))))),
      );
    fc.assert(
      fc.property(
        ...([
          shares,
          fc.integer({ min: 1, max: 50 }),
          fc.bigInt({ min: 0n, max: 10n ** 10n }),
        ] as const),
        fc.bigInt({ min: 1n, max: 10n ** 9n }),
        (parts, packs, price, grams) => {
          const line = { packs, packPrice: price as TypedLine['packPrice'] };
          const weight = quantityFromMicro(grams);
          const planned = planLines(
            [typed({ ...line, weight })],
            () => ({ ...syringe, parts }),
            CENT,
          );
          if (!Array.isArray(planned)) throw new Error(planned.message);
          const sum = (of: (one: PlannedLine) => bigint) =>
            planned.reduce((total, one) => total + of(one), 0n);
          expect(sum((one) => one.packPrice)).toBe(price);
          expect(sum((one) => one.weight)).toBe(grams);
          expect(planned.filter((one) => one.orderLineId !== null)).toHaveLength(1);
        },
      ),
      { numRuns: 100 },
    );
  });
});
