import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { formatQuantity, quantity, quantityFromMicro } from '#lib/measure';
import { chargeWhole } from './charge-whole.js';

const use = (consumableId: string, dispensed: string, sharesDose = true) => ({
  consumableId,
  dispensed: quantity(dispensed),
  placed: quantity(dispensed),
  sharesDose,
});

const DOSE = quantity('0.25');
const doseOf = (id: string) => (id === 'capsule' ? DOSE : null);

describe('what a visit is charged', () => {
  it('is whole doses, shared ones once', () => {
    const lines = [use('capsule', '0.1'), use('paste', '0.1'), use('capsule', '0.05')];
    const charged = chargeWhole([...lines, use('capsule', '0.1', false)], doseOf);
    expect(charged.map(formatQuantity)).toEqual(['0.166667', '0.1', '0.083333', '0.25']);
  });

  it('is never more in one visit than in several, and never less than was dispensed', () => {
    const any = fc.record({
      consumableId: fc.constantFrom('capsule', 'paste'),
      dispensed: fc.bigInt({ min: 1n, max: 900_000n }).map(quantityFromMicro),
      sharesDose: fc.boolean(),
    });
    const lines = fc.array(
      any.map((line) => ({ ...line, placed: line.dispensed })),
      { maxLength: 6 },
    );
    const sum = (of: readonly bigint[]) => of.reduce((a, b) => a + b, 0n);
    fc.assert(
      fc.property(lines, lines, (one, other) => {
        const together = chargeWhole([...one, ...other], doseOf);
        const apart = sum(chargeWhole(one, doseOf)) + sum(chargeWhole(other, doseOf));
        expect(sum(together) <= apart).toBe(true);
        [...one, ...other].forEach((line, i) => {
          expect((together[i] ?? 0n) >= line.dispensed).toBe(true);
        });
      }),
    );
  });
});
