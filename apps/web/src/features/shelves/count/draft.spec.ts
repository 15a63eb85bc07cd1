import { describe, expect, it } from '@jest/globals';
import { holdingWith } from '../holding/holding.fixture.js';
import { differing, readDraft } from './draft.js';

const piece = { ...holdingWith().consumable, unit: 'piece' as const };
const paste = holdingWith({ id: 'a', onHand: '4' });
const strips = holdingWith({ id: 'b', onHand: '100', consumable: piece });

describe('a count', () => {
  it('leaves alone what was not counted', () => {
    expect(readDraft({ a: ' ', gone: '3' }, [paste, strips])).toEqual({ lines: [], troubles: {} });
  });

  it('tells differences, more and less, from what is as expected', () => {
    const { lines } = readDraft({ a: '4,0', b: '97' }, [paste, strips]);
    expect(lines.map(({ counted, difference }) => [counted, difference])).toEqual([
      ['4.0', 0n],
      ['97', -3_000_000n],
    ]);
    expect(differing(lines).map(({ holding }) => holding.id)).toEqual(['b']);
    const [more] = readDraft({ a: '4.25' }, [paste]).lines;
    expect(more?.difference).toBe(250_000n);
  });

  it('says what cannot be right, line by line', () => {
    const { lines, troubles } = readDraft({ a: '-1', b: '1.5' }, [paste, strips]);
    expect(lines).toEqual([]);
    expect(troubles).toEqual({ a: 'negative', b: 'whole' });
  });
});
