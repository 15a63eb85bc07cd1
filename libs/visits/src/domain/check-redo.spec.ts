import { describe, expect, it } from '@jest/globals';
import { checkRedo, type EarlierRestoration } from './check-redo.js';

const first: EarlierRestoration = {
  id: 'a',
  visit_id: 'v',
  visited_on: '2026-05-04',
  chart_reference: 'C-1',
  tooth: 21,
  reversed: false,
};

const check = (
  earlier: Partial<EarlierRestoration>,
  of: object = {},
  chart: string | null = 'c-1 ',
) =>
  checkRedo(
    [
      { redoOf: null, tooth: 11 },
      { redoOf: 'a', tooth: 21, ...of },
    ],
    {
      day: '2026-06-01',
      chartReference: chart,
      earlier: new Map([['a', { ...first, ...earlier }]]),
    },
  );

describe('a restoration that is done again', () => {
  it('names an earlier one of the same tooth and chart', () => {
    expect(check({})).toBeUndefined();
    expect(check({ chart_reference: 'C-2' }, {}, null)).toBeUndefined();
  });

  it.each([
    [{ chart_reference: 'C-2' }, {}, 'names a restoration of another chart'],
    [{}, { tooth: 11 }, 'names a restoration of another tooth'],
    [{ reversed: true }, {}, 'names a restoration of a visit that was reversed'],
    [{ visited_on: '2026-06-02' }, {}, 'names a later restoration, of 2026-06-02'],
  ])('refuses %j %j: %s', (earlier, of, message) => {
    const error = { field: 'restorations[1].redoOf', message };
    expect(check(earlier, of)).toEqual({ code: 'does not fit', error });
  });

  it('refuses what the book does not know', () => {
    const problem = { code: 'unknown', field: 'restorations[1].redoOf' };
    expect(check({}, { redoOf: 'b' })).toEqual(problem);
  });
});
