import { describe, expect, it } from '@jest/globals';
import type { Reason } from '#lib/dentition';
import { formatQuantity, quantity } from '#lib/measure';
import { expand, line, restoration } from './restorations-for-tests.js';
import { DRIVERS, type PlannedLine, type TemplateLine } from './template.js';

/** What is dispensed of everything, by key. */
function byKey(lines: readonly PlannedLine[]): Record<string, string> {
  return Object.fromEntries(lines.map((each) => [each.key, formatQuantity(each.dispensed)]));
}

function dispensed(lines: readonly PlannedLine[]): string[] {
  return lines.map((each) => formatQuantity(each.dispensed));
}

describe('what drives the amount of a line', () => {
  it.each<[TemplateLine['driver'], string]>([
    ['visit', '0.5'],
    ['staff member', '1.5'],
    ['front segment or quadrant', '0.5'],
    ['tooth', '0.5'],
    ['restoration', '0.5'],
    ['surface', '1.5'],
    ['proximal surface', '1'],
    ['layer', '1.5'],
    ['mm3', '10.25'],
    ['shade', '1'],
    ['attempt', '0.5'],
    ['cycle', '2'],
  ])('%s', (driver, expected) => {
    const facts = {
      on: [16, 'MOD'] as [number, string],
      depthMm: quantity('4.1'),
      volumeMm3: quantity('20.5'),
      shades: ['a', 'b'],
      cycles: 4,
    };
    expect(dispensed(expand([restoration([line('gel', driver, '0.5')], facts)], 3))).toEqual([
      expected,
    ]);
  });

  it('has a count for each', () => {
    expect(DRIVERS).toHaveLength(12);
  });

  it('drops what is not used at all', () => {
    const strip = line('wedge', 'proximal surface', '1');
    expect(expand([restoration([strip], { on: [11, 'F'] })])).toEqual([]);
  });

  it('counts a line only for its reasons', () => {
    const reasons: Reason[] = ['decay', 'fracture'];
    const lines = [line('dye', 'tooth', '0.04', { reasons }), line('gel', 'restoration', '1')];
    expect(dispensed(expand([restoration(lines)]))).toEqual(['0.04', '1']);
    expect(dispensed(expand([restoration(lines, { reason: 'cosmetic' })]))).toEqual(['1']);
  });

  it('uses pieces whole', () => {
    const half = { placed: quantity('0.1') };
    const [used] = expand([restoration([line('capsule-a', 'mm3', '0.3', half)])]);
    expect([used?.placed, used?.dispensed]).toEqual([quantity('2'), quantity('4')]);
    expect(dispensed(expand([restoration([line('bib', 'staff member', '0.5')])], 3))).toEqual([
      '2',
    ]);
  });
});

describe('the keys and the order of lines', () => {
  it('names the visit first, then teeth, then restorations', () => {
    const lines = [
      line('paste', 'restoration', '0.06', { lineNumber: 7, everyAttempt: true }),
      line('etch', 'tooth', '0.08', { lineNumber: 3 }),
      line('bib', 'visit', '1', { lineNumber: 5 }),
    ];
    const planned = expand([
      restoration(lines, { attempts: 2 }),
      restoration(lines, { on: [21, 'D'] }),
    ]);
    expect(byKey(planned)).toEqual({
      'visit/visit/bib': '1',
      'tooth/11/tooth/etch': '0.08',
      'tooth/21/tooth/etch': '0.08',
      'r1/a1/7/paste': '0.06',
      'r1/a2/7/paste': '0.06',
      'r2/a1/7/paste': '0.06',
    });
    expect(planned.map(({ key }) => key[0])).toEqual(['v', 't', 't', 'r', 'r', 'r']);
    expect(planned.map((each) => [each.restoration, each.tooth, each.attempt])).toEqual([
      [null, null, 1],
      [null, 11, 1],
      [null, 21, 1],
      [0, null, 1],
      [0, null, 2],
      [1, null, 1],
    ]);
  });
});

describe('what restorations share', () => {
  it('uses once what two templates name for the visit, and the greater amount', () => {
    const planned = expand([
      restoration([line('bib', 'visit', '1'), line('film', 'visit', '4')]),
      restoration([line('bib', 'visit', '1'), line('film', 'visit', '6')], { on: [12, 'D'] }),
    ]);
    expect(byKey(planned)).toEqual({ 'visit/visit/bib': '1', 'visit/visit/film': '6' });
  });

  it('adds what one template names twice', () => {
    const planned = expand([restoration([line('film', 'visit', '1'), line('film', 'visit', '2')])]);
    expect(byKey(planned)).toEqual({ 'visit/visit/film': '3' });
  });

  it('keeps apart what is counted by different drivers', () => {
    const planned = expand([
      restoration([line('glove', 'visit', '2'), line('glove', 'staff member', '2')]),
    ]);
    expect(byKey(planned)).toEqual({ 'visit/visit/glove': '2', 'visit/staff member/glove': '4' });
  });

  it('counts each region that uses it once', () => {
    const numb = [line('cartridge', 'front segment or quadrant', '1')];
    const planned = expand([
      restoration(numb, { on: [11, 'M'] }),
      restoration(numb, { on: [23, 'D'] }), // upper front, as the first
      restoration(numb, { on: [36, 'O'] }),
      restoration([], { on: [46, 'O'] }), // its template names no cartridge
    ]);
    expect(byKey(planned)).toEqual({ 'visit/front segment or quadrant/cartridge': '2' });
  });

  it('uses once per tooth what two restorations of a tooth name', () => {
    const bond = [line('etch', 'tooth', '0.08'), line('paste', 'restoration', '0.06')];
    const planned = expand([restoration(bond), restoration(bond, { on: [11, 'D'] })]);
    expect(byKey(planned)).toMatchObject({ 'tooth/11/tooth/etch': '0.08' });
    expect(planned).toHaveLength(3);
  });
});

describe('retakes', () => {
  const lines = [
    line('bib', 'visit', '1', { lineNumber: 1 }),
    line('glove', 'staff member', '2', { lineNumber: 2, everyAttempt: true }),
    line('etch', 'tooth', '0.08', { lineNumber: 3, everyAttempt: true }),
    line('wedge', 'proximal surface', '1', { lineNumber: 4, everyAttempt: true }),
    line('finish', 'restoration', '1', { lineNumber: 5 }),
    line('trial', 'attempt', '0.03', { lineNumber: 6 }),
  ];

  it('repeat what every attempt uses, as the own lines of the restoration', () => {
    const planned = expand([restoration(lines, { attempts: 3 }), restoration(lines)]);
    const again = planned.filter(({ attempt }) => attempt > 1);
    expect(byKey(again)).toEqual({
      'r1/a2/2/glove': '4',
      'r1/a2/3/etch': '0.08',
      'r1/a2/4/wedge': '1',
      'r1/a2/6/trial': '0.03',
      'r1/a3/2/glove': '4',
      'r1/a3/3/etch': '0.08',
      'r1/a3/4/wedge': '1',
      'r1/a3/6/trial': '0.03',
    });
    expect(again.every((each) => each.restoration === 0 && each.tooth === null)).toBe(true);
  });

  it('leave the first attempt as it was', () => {
    const first = expand([restoration(lines, { attempts: 3 })]).filter((l) => l.attempt === 1);
    expect(first).toEqual(expand([restoration(lines)]));
  });
});

describe('the chosen shades', () => {
  const shades = ['dentine', 'body', 'enamel'];

  it('share the amount equally, to the last millionth', () => {
    const planned = expand([
      restoration([line(null, 'mm3', '0.01', { lineNumber: 1 })], {
        shades,
        volumeMm3: quantity('10'),
      }),
    ]);
    expect(byKey(planned)).toEqual({
      'r1/a1/1/dentine': '0.033334',
      'r1/a1/1/body': '0.033333',
      'r1/a1/1/enamel': '0.033333',
    });
  });

  it('take the full amount each when it is counted per shade', () => {
    const planned = expand([restoration([line(null, 'shade', '0.03')], { shades })]);
    expect(dispensed(planned)).toEqual(['0.03', '0.03', '0.03']);
  });

  it('are each opened when they come in pieces', () => {
    const capsules = ['capsule-a', 'capsule-b', 'capsule-c'];
    const lines = [line(null, 'mm3', '0.1')];
    const one = expand([restoration(lines, { shades: capsules, volumeMm3: quantity('4') })]);
    expect(dispensed(one)).toEqual(['1', '1', '1']);
    const four = expand([restoration(lines, { shades: capsules, volumeMm3: quantity('40') })]);
    expect(dispensed(four)).toEqual(['2', '1', '1']);
  });

  it('may be partly in pieces', () => {
    const planned = expand([
      restoration([line(null, 'restoration', '0.5')], { shades: ['capsule-a', 'body'] }),
    ]);
    expect(dispensed(planned)).toEqual(['1', '0.25']);
  });

  it('are nothing when none was chosen', () => {
    expect(expand([restoration([line(null, 'mm3', '0.01')])])).toEqual([]);
  });
});
