import { describe, expect, it } from '@jest/globals';
import {
  CELL_PROBLEMS as IN_GERMAN,
  SHEET_PROBLEMS as SHEETS_IN_GERMAN,
} from '../../../../apps/web/src/text/de/file-problems.js';
import { PROBLEM_CODES, PROBLEMS, problem, SHEET_PROBLEM_CODES, sheetProblem } from './problems.js';

describe('what is wrong with a row', () => {
  it('is a sentence filled with its values', () => {
    expect(problem('price', 'two-readings', '1.234', 1234)).toEqual({
      ...{ column: 'price', code: 'two-readings', values: ['1.234', '1234'] },
      message: 'could be 1.234 or 1234; write 1234 or 1.2340',
    });
    expect(sheetProblem('merged', 'A', 'B2:B3').sentence).toBe(
      'Sheet "A" has the merged cells B2:B3. Split them; each row needs its own.',
    );
  });

  it('speaks of the same values in the German of the screens', () => {
    const said = (words: string) => [...new Set(words.match(/\{\d\}/g) ?? [])].sort();
    for (const code of PROBLEM_CODES) {
      expect([code, said(IN_GERMAN[code])]).toEqual([code, said(PROBLEMS[code])]);
    }
    for (const code of SHEET_PROBLEM_CODES) expect(SHEETS_IN_GERMAN[code]).toContain('{0}');
  });
});
