import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import {
  formatSurfaces,
  ISO_TEETH,
  type IsoTooth,
  isAnterior,
  parseIsoTooth,
  parseSurfaces,
  proximalCount,
  SURFACES,
  toothKind,
} from './index.js';

function tooth(digits: number): IsoTooth {
  const found = parseIsoTooth(digits);
  if (found === undefined) throw new Error(`${digits} is not a tooth`);
  return found;
}

/** One of each kind, permanent and primary. */
const ANTERIOR = [11, 12, 13, 31, 42, 43, 51, 52, 53, 71, 82, 83].map(tooth);
const POSTERIOR = [14, 15, 16, 17, 18, 34, 45, 36, 47, 38, 54, 55, 74, 85].map(tooth);

function written(digits: number, text: string): string {
  const parsed = parseSurfaces(tooth(digits), text);
  return parsed.ok ? formatSurfaces(parsed.surfaces) : `${parsed.code} ${parsed.letter ?? ''}`;
}

describe('reading surfaces', () => {
  it.each([
    [16, 'MOD', 'MOD'],
    [16, 'DOM', 'MOD'],
    [16, 'o', 'O'],
    [46, 'ldfom', 'MODFL'],
    [16, 'B', 'F'],
    [16, 'V', 'F'],
    [16, 'P', 'L'],
    [16, ' m o  d ', 'MOD'],
    [16, 'OBP', 'OFL'],
    [11, 'M', 'M'],
    [11, 'DI', 'ID'],
    [11, 'LFDIM', 'MIDFL'],
    [11, 'vp', 'FL'],
    [51, 'IM', 'MI'],
    [85, 'OD', 'OD'],
  ])('of %i from %j', (digits, text, expected) => {
    expect(written(digits, text)).toBe(expected);
  });

  it.each([
    [11, '', 'no_surface '],
    [11, '  ', 'no_surface '],
    [11, 'MX', 'unknown_surface X'],
    [11, 'm,d', 'unknown_surface ,'],
    [11, '1', 'unknown_surface 1'],
    [11, 'MO', 'surface_not_on_tooth O'],
    [16, 'MI', 'surface_not_on_tooth I'],
    [16, 'MM', 'surface_repeated M'],
    [16, 'BF', 'surface_repeated F'],
    [16, 'fb', 'surface_repeated B'],
    [16, 'VB', 'surface_repeated B'],
    [16, 'LP', 'surface_repeated P'],
    [16, 'MMX', 'surface_repeated M'],
    [16, 'XMM', 'unknown_surface X'],
  ])('refuses for %i %j', (digits, text, expected) => {
    expect(written(digits, text)).toBe(expected);
  });

  it('has no letter to name when nothing was written', () => {
    expect(parseSurfaces(tooth(11), '')).toEqual({ ok: false, code: 'no_surface' });
  });

  it.each(ANTERIOR.map((t) => [t, toothKind(t)] as const))('knows I but not O on %i, a %s', (t) => {
    const fit = SURFACES.filter((surface) => parseSurfaces(t, surface).ok);
    expect(fit).toEqual(['M', 'I', 'D', 'F', 'L']);
  });

  it.each(POSTERIOR.map((t) => [t, toothKind(t)] as const))(
    'knows O but not I on %i, a %s',
    (t) => {
      const fit = SURFACES.filter((surface) => parseSurfaces(t, surface).ok);
      expect(fit).toEqual(['M', 'O', 'D', 'F', 'L']);
    },
  );
});

describe('surfaces that face a neighbour', () => {
  it.each([
    ['O', 0],
    ['FL', 0],
    ['MO', 1],
    ['OD', 1],
    ['MOD', 2],
    ['MODFL', 2],
  ])('of %s are %i', (text, count) => {
    const parsed = parseSurfaces(tooth(36), text);
    expect(parsed.ok && proximalCount(parsed.surfaces)).toBe(count);
  });
});

describe('any surfaces', () => {
  const anyTooth = fc.constantFrom(...ISO_TEETH);
  const some = fc.tuple(anyTooth, fc.subarray([...SURFACES], { minLength: 1 })).map(([t, list]) => {
    const middle = isAnterior(t) ? 'O' : 'I';
    return { t, list: list.filter((surface) => surface !== middle) };
  });

  it('are read in any order, any case and any spelling, and written in one', () => {
    const spellings = { M: 'M', O: 'O', I: 'I', D: 'D', F: 'FBV', L: 'LP' };
    fc.assert(
      fc.property(some, fc.infiniteStream(fc.nat()), ({ t, list }, numbers) => {
        fc.pre(list.length > 0);
        const next = () => Number(numbers.next().value);
        const letters = list
          .map((surface) => ({ key: next(), surface }))
          .toSorted((a, b) => a.key - b.key)
          .map(({ surface }) => spellings[surface].charAt(next() % spellings[surface].length))
          .map((letter) => (next() % 2 === 0 ? letter : letter.toLowerCase()));
        const parsed = parseSurfaces(t, letters.join(next() % 2 === 0 ? '' : ' '));
        expect(parsed).toEqual({ ok: true, surfaces: list });
        expect(formatSurfaces(list.toReversed())).toBe(list.join(''));
      }),
    );
  });

  it('either are read, once each, or are refused with a code', () => {
    const text = fc.oneof(fc.string(), fc.stringMatching(/^[MODIFLBVP ]{0,7}$/));
    fc.assert(
      fc.property(anyTooth, text, (t, input) => {
        const parsed = parseSurfaces(t, input);
        if (!parsed.ok) {
          expect(parsed.letter === undefined).toBe(parsed.code === 'no_surface');
          return;
        }
        expect(new Set(parsed.surfaces).size).toBe(parsed.surfaces.length);
        expect(parseSurfaces(t, formatSurfaces(parsed.surfaces))).toEqual(parsed);
        expect(proximalCount(parsed.surfaces)).toBeLessThanOrEqual(2);
      }),
    );
  });
});
