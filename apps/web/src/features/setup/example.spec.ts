import { describe, expect, it } from '@jest/globals';
import type { ExampleTooth } from './example.js';
import {
  classesOf,
  exampleTeeth,
  factsOf,
  readTeeth,
  teethLike,
  withSurface,
  withTooth,
  writeTeeth,
} from './example.js';

function one(address: string): ExampleTooth {
  const [tooth] = readTeeth(address);
  if (!tooth) throw new Error('There is always an example');
  return tooth;
}

describe('the example in the address', () => {
  it('comes back as it was written', () => {
    const address = '21.MI.IV.large.cosmetic.2~46.MOD.II.small.decay.1~11.F.none.medium.wear.3';
    expect(writeTeeth(readTeeth(address))).toBe(address);
  });

  it('is a front tooth when there is none, or none that can be', () => {
    for (const address of [undefined, '', '99.M', '11.O.I', 'nonsense']) {
      expect(writeTeeth(readTeeth(address))).toBe('11.M.III.medium.decay.1');
    }
    expect(writeTeeth(readTeeth('11.M.VII.huge.whim.9'))).toBe('11.M.none.medium.decay.1');
    expect(readTeeth(Array(9).fill('11.M.III.medium.decay.1').join('~'))).toHaveLength(4);
  });
});

describe('a tooth of the example', () => {
  it('keeps a class that fits, whatever is changed', () => {
    const front = one('11.MI.IV.medium.decay.1');
    const [back] = exampleTeeth().filter((tooth) => tooth === 46);
    if (back === undefined) throw new Error('46 is a tooth');
    expect(writeTeeth([withTooth(front, back)])).toBe('46.MO.II.medium.decay.1');
    expect(writeTeeth([withSurface(front, 'I')])).toBe('11.M.III.medium.decay.1');
    expect(classesOf(one('46.O.I.medium.decay.1'))).toEqual(['I', 'VI']);
  });

  it('keeps its last surface', () => {
    const tooth = one('11.M.III.medium.decay.1');
    expect(withSurface(tooth, 'M')).toBe(tooth);
    expect(withSurface(tooth, 'D').surfaces).toEqual(['M', 'D']);
  });

  it('is asked about in the notation of the practice', () => {
    expect(factsOf([one('21.M.III.medium.decay.1')], ['s'], 'universal')).toEqual([
      {
        tooth: '9',
        surfaces: 'M',
        cavityClass: 'III',
        size: 'medium',
        reason: 'decay',
        attempts: 1,
        shades: ['s'],
      },
    ]);
  });

  it('can be like a restoration that was recorded', () => {
    const last = { tooth: '30', surfaces: 'MO', cavityClass: 'II', attempts: 2 } as const;
    expect(teethLike({ ...last, reason: 'wear' }, 'universal')).toBe('46.MO.II.medium.wear.2');
  });

  it('is one of 32', () => {
    expect(exampleTeeth()).toHaveLength(32);
  });
});
