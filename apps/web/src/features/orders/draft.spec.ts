import { describe, expect, it } from '@jest/globals';
import { en } from '../../text/en.js';
import { type Draft, draftBody, draftErrors, EMPTY_DRAFT } from './draft.js';

const line = {
  ...{ id: undefined, presentationId: 'p1', goods: 'Paste', pack: 'Syringe' },
  ...{ packs: '2', packPrice: '71,50' },
};
const draft: Draft = { ...EMPTY_DRAFT, supplierId: 's1', lines: [line], note: ' Soon. ' };

const wrong = (of: Draft) =>
  Object.entries(draftErrors(of, en))
    .filter(([, words]) => words !== undefined)
    .map(([field]) => field);

describe('an order as it is typed', () => {
  it('goes to the service as decimals in quotes, and nothing as null', () => {
    expect(draftBody(draft)).toEqual({
      supplierId: 's1',
      lines: [{ presentationId: 'p1', packs: 2, packPrice: '71.50' }],
      ...{ freight: null, reference: null, note: 'Soon.' },
    });
    const known = draftBody({ ...draft, lines: [{ ...line, id: 'l1', packPrice: '' }] });
    expect(known.lines).toEqual([{ id: 'l1', presentationId: 'p1', packs: 2, packPrice: null }]);
  });

  it('says which of its fields are wrong', () => {
    expect(wrong(draft)).toEqual([]);
    expect(wrong(EMPTY_DRAFT)).toEqual(['supplierId', 'add']);
    const lines = [line, { ...line, packs: '0' }, { ...line, packPrice: '1.000,0' }];
    expect(wrong({ ...draft, lines, freight: '-1' })).toEqual([
      ...['freight', 'lines[1].packs', 'lines[2].packPrice'],
    ]);
  });
});
