import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { formatQuantity, quantity, quantityFromMicro } from '#lib/measure';
import { type LineEvidence, meanOf, sentenceOf, suggestLine } from './suggest-version.js';

const line = (more: Partial<LineEvidence>): LineEvidence => ({
  placed: quantity('0.04'),
  dispensed: quantity('0.06'),
  unit: 'g',
  uses: 200,
  planned: quantity('12'),
  usedPlaced: quantity('9.6'),
  usedDispensed: quantity('16.8'),
  ...more,
});

describe('a template line against what was used', () => {
  it('is suggested anew: it says 0.06 g, the last 200 used 0.084 g', () => {
    const found = suggestLine(line({}));
    expect([formatQuantity(found.dispensed), formatQuantity(found.placed), found.changed]).toEqual([
      '0.084',
      '0.048',
      true,
    ]);
    expect(sentenceOf(quantity('0.06'), found.used?.dispensed ?? quantity('0'), 'g', 200)).toBe(
      'The template says 0.06 g, the last 200 used 0.084 g.',
    );
  });

  it('stays as it is without evidence, with little of it, or with a small difference', () => {
    const none = { uses: 0, planned: quantity('0') };
    expect(suggestLine(line(none))).toMatchObject({ used: null, changed: false });
    expect(suggestLine(line({ uses: 4 })).changed).toBe(false);
    const close = { usedDispensed: quantity('12.3'), usedPlaced: quantity('8.1') };
    expect(suggestLine(line(close))).toMatchObject({ dispensed: 60_000n, changed: false });
  });

  it('keeps what is small as it is: 0.0023 g for a mm3 is not rounded to 0.002 g', () => {
    const small = { placed: quantity('0.002'), dispensed: quantity('0.0023') };
    const used = { planned: quantity('0.23'), usedPlaced: quantity('0.2') };
    const same = suggestLine(line({ ...small, ...used, usedDispensed: quantity('0.2301') }));
    expect(same).toMatchObject({ dispensed: 2300n, changed: false });
    const more = suggestLine(line({ ...small, ...used, usedDispensed: quantity('0.31') }));
    expect(more).toMatchObject({ dispensed: 3100n, placed: 2000n, changed: true });
    expect(sentenceOf(quantity('0.0023'), quantity('0.00312'), 'g', 9)).toContain('0.0031 g.');
    expect(meanOf(quantity('0.01'), 3, 'g')).toBe(3300n);
  });

  it('is whole where stock is counted, and never nothing', () => {
    const wedge = { unit: 'piece', placed: quantity('0'), dispensed: quantity('1') };
    const used = { planned: quantity('200'), usedPlaced: quantity('0') };
    const of = (dispensed: string) =>
      suggestLine(line({ ...wedge, ...used, usedDispensed: quantity(dispensed) })).dispensed;
    expect([of('310'), of('260'), of('20')]).toEqual([2_000_000n, 1_000_000n, 1_000_000n]);
  });

  it('always dispenses something, and at least what it places', () => {
    const micro = fc.bigInt({ min: 1n, max: 10n ** 9n }).map(quantityFromMicro);
    const property = fc.property(micro, micro, micro, micro, (a, b, planned, most) => {
      const [placed, dispensed] = a < b ? [a, b] : [b, a];
      const usedPlaced = quantityFromMicro(most / 3n);
      const found = suggestLine(
        line({ placed, dispensed, planned, usedPlaced, usedDispensed: most, unit: 'mL' }),
      );
      expect(found.dispensed > 0n && found.dispensed >= found.placed).toBe(true);
    });
    fc.assert(property);
  });
});

describe('what was used beside the template', () => {
  it('is a mean in steps that can be kept', () => {
    expect(meanOf(quantity('1'), 3, 'g')).toBe(333_000n);
    expect(meanOf(quantity('1'), 3, 'piece')).toBe(1_000_000n);
  });
});
