import { describe, expect, it } from '@jest/globals';
import { CAVITY_CLASSES, CAVITY_SIZES } from '#lib/dentition';
import { quantity } from '#lib/measure';
import { planningDepth } from './planning-depth.js';
import { type RestorationInput, readRestoration, type TemplateOf } from './read-restoration.js';
import type { TemplateLine, TemplateVersion } from './template.js';

const shadeLine: TemplateLine = {
  lineNumber: 1,
  consumableId: null,
  driver: 'mm3',
  placed: quantity('0.002'),
  dispensed: quantity('0.003'),
  everyAttempt: true,
  reasons: ['decay'],
  sharesDose: true,
  anaesthetic: false,
};

function template(version: number, lines: readonly TemplateLine[] = []): TemplateVersion {
  return {
    templateId: 'filling',
    version,
    name: 'Filling',
    minutes: 40,
    assistantMinutes: 30,
    layerThicknessMm: quantity('2'),
    active: true,
    lines,
  };
}

const templateOf: TemplateOf = (id, version = 2) => {
  if (id === 'shaded') return template(1, [shadeLine]);
  return id === 'filling' && version <= 2 ? template(version) : undefined;
};

const input: RestorationInput = {
  tooth: '11',
  surfaces: 'im',
  cavityClass: 'IV',
  reason: 'decay',
  templateId: 'filling',
};

function read(more: Partial<RestorationInput> = {}, notation: 'iso' | 'universal' = 'iso') {
  return readRestoration({ ...input, ...more }, 2, notation, templateOf);
}

function planned(more: Partial<RestorationInput> = {}, notation: 'iso' | 'universal' = 'iso') {
  const result = read(more, notation);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.restoration;
}

function problems(more: Partial<RestorationInput>, notation: 'iso' | 'universal' = 'iso') {
  const result = read(more, notation);
  return result.ok ? [] : result.problems.map(({ field, message }) => `${field} ${message}`);
}

describe('reading a restoration', () => {
  it('fills in what was left out', () => {
    expect(planned()).toEqual({
      tooth: 11,
      surfaces: ['M', 'I'],
      cavityClass: 'IV',
      reason: 'decay',
      template: template(2),
      shades: [],
      attempts: 1,
      cycles: 1,
      volumeMm3: quantity('25'),
      volumeSource: 'planning value',
      lengthMm: null,
      widthMm: null,
      depthMm: quantity('2.5'),
      minutes: 40,
      assistantMinutes: 30,
    });
  });

  it('keeps what was entered', () => {
    const entered = {
      shades: ['body', 'enamel'],
      attempts: 2,
      cycles: 3,
      volumeMm3: '31.5',
      depthMm: '3',
      minutes: 0,
      assistantMinutes: 15,
    };
    expect(planned({ ...entered, templateVersion: 1 })).toMatchObject({
      ...entered,
      template: { version: 1 },
      volumeMm3: quantity('31.5'),
      volumeSource: 'entered',
      depthMm: quantity('3'),
    });
  });

  it('takes null for left out', () => {
    const nothing = { templateVersion: null, shades: null, attempts: null, cycles: null };
    const size = { size: null, volumeMm3: null, depthMm: null, minutes: null };
    expect(planned({ ...nothing, ...size })).toEqual(planned());
    expect(planned({ cavityClass: null, surfaces: 'F' })).not.toHaveProperty('cavityClass');
  });

  it('plans by class and size, or as a veneer without a class', () => {
    expect(planned({ size: 'large' }).volumeMm3).toBe(quantity('85'));
    const { cavityClass: _, ...veneer } = input;
    const result = readRestoration(veneer, 0, 'iso', templateOf);
    expect(result.ok && result.restoration.volumeMm3).toBe(quantity('38'));
    expect(result.ok && result.restoration.depthMm).toBe(quantity('0.5'));
  });

  it('works the volume out from length, width and depth, if they were measured', () => {
    const sides = { lengthMm: '4', widthMm: '5', depthMm: '4' };
    const box = planned({ ...sides, cavityClass: 'III', surfaces: 'M' });
    expect(box).toMatchObject({
      volumeMm3: quantity('80'),
      volumeSource: 'dimensions',
      lengthMm: quantity('4'),
      widthMm: quantity('5'),
      depthMm: quantity('4'),
    });
    // A corner is half a box.
    expect(planned(sides).volumeMm3).toBe(quantity('40'));
  });

  it('reads the notation it is told', () => {
    expect(planned({ tooth: '8' }, 'universal').tooth).toBe(11);
    expect(planned({ tooth: '11' }, 'universal').tooth).toBe(23);
  });

  it.each<[Partial<RestorationInput>, string]>([
    [{ tooth: '19' }, 'restorations[2].tooth is not a tooth in ISO 3950, e.g. 11'],
    [{ surfaces: 'MO' }, 'restorations[2].surfaces has O, which this tooth does not have'],
    [{ surfaces: 'MX' }, 'restorations[2].surfaces has the letter X, which names no surface'],
    [{ surfaces: 'MIM' }, 'restorations[2].surfaces names the surface M twice'],
    [{ surfaces: ' ' }, 'restorations[2].surfaces must name at least one surface'],
    [{ cavityClass: 'II' }, 'restorations[2].cavityClass does not occur on this tooth'],
    [{ surfaces: 'M' }, 'restorations[2].cavityClass needs the surfaces M or D, and I'],
    [
      { templateId: 'none' },
      'restorations[2].templateId names no procedure template of this practice',
    ],
    [
      { lengthMm: '4', widthMm: '3' },
      'restorations[2].depthMm is needed for a volume from dimensions',
    ],
    [
      { widthMm: '3', depthMm: '2' },
      'restorations[2].lengthMm is needed for a volume from dimensions',
    ],
    [
      { lengthMm: '4', widthMm: '3', depthMm: '2', volumeMm3: '9' },
      'restorations[2].volumeMm3 follows from the dimensions: leave one of them out',
    ],
    [
      { lengthMm: '100', widthMm: '100', depthMm: '100' },
      'restorations[2].lengthMm makes, with width and depth, a volume outside 0 to 10000 mm3',
    ],
    [{ templateVersion: 3 }, 'restorations[2].templateVersion is not a version of this template'],
    [
      { templateId: 'shaded' },
      'restorations[2].shades must name at least one, because the template asks for shades',
    ],
  ])('names what is wrong: %o', (more, expected) => {
    expect(problems(more)).toEqual([expected]);
  });

  it('says which mistakes are references to nothing', () => {
    const unknown = read({ templateVersion: 3 });
    const unfit = read({ tooth: '99' });
    expect(unknown.ok || unknown.problems.map((each) => each.unknown)).toEqual([true]);
    expect(unfit.ok || unfit.problems.map((each) => each.unknown)).toEqual([false]);
  });

  it('asks for shades only where the line counts', () => {
    expect(problems({ templateId: 'shaded', reason: 'cosmetic' })).toEqual([]);
    expect(problems({ templateId: 'shaded', shades: ['body'] })).toEqual([]);
  });

  it('names everything that is wrong at once', () => {
    expect(problems({ tooth: 'x', templateId: 'none' })).toHaveLength(2);
  });
});

describe('planning depths', () => {
  // The cavity of a study: 4 x 5 x 4 mm (Braz Oral Res, micro-CT bulk-fill study, abstract).
  it('has the depth of the study cavity', () => {
    expect(planningDepth('I', 'large')).toBe('4');
  });

  it('is more than nothing and grows with the size', () => {
    for (const cls of [...CAVITY_CLASSES, undefined]) {
      const depths = CAVITY_SIZES.map((size) => quantity(planningDepth(cls, size)));
      expect(depths.every((depth, n) => depth > 0n && depth >= (depths[n - 1] ?? 0n))).toBe(true);
    }
  });
});
