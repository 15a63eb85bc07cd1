import { describe, expect, it } from '@jest/globals';
import { type LineFigures, lineProblems } from './template-rules.js';

const etch: LineFigures = {
  consumableId: 'etch',
  driver: 'tooth',
  placed: '0.06',
  dispensed: '0.08',
};

function problems(...lines: Partial<LineFigures>[]) {
  const units = new Map([
    ['etch', 'mL'],
    ['wedge', 'piece'],
    ['bur', 'use'],
  ]);
  const found = lineProblems(
    lines.map((line) => ({ ...etch, ...line })),
    (id) => units.get(id),
  );
  return found.map(({ field, message }) => `${field} ${message}`);
}

describe('the lines of a template', () => {
  it('may be these', () => {
    expect(problems({}, { placed: '0' }, { placed: '0.08' })).toEqual([]);
    expect(problems({ consumableId: 'wedge', placed: '1', dispensed: '2.0' })).toEqual([]);
    expect(problems({ consumableId: null, driver: 'mm3' })).toEqual([]);
    expect(problems({ consumableId: null, driver: 'tooth' })).toEqual([]);
  });

  it('never place more than they dispense', () => {
    expect(problems({}, { placed: '0.081' })).toEqual([
      'lines[1].placed must not be more than what is dispensed',
    ]);
  });

  it('use pieces and uses whole', () => {
    expect(problems({ consumableId: 'wedge', placed: '0', dispensed: '0.5' })).toEqual([
      'lines[0].dispensed must be a whole number, because stock is kept in whole pieces',
    ]);
    expect(problems({ consumableId: 'bur', placed: '0.5', dispensed: '1' })).toEqual([
      'lines[0].placed must be a whole number, because stock is kept in whole uses',
    ]);
  });

  it.each(['visit', 'staff member', 'front segment or quadrant'] as const)(
    'take no chosen shades per %s',
    (driver) => {
      expect(problems({ consumableId: null, driver })).toEqual([
        'lines[0].driver is shared by the visit, and shades are chosen for one restoration',
      ]);
    },
  );
});
