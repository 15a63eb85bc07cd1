import { describe, expect, it } from '@jest/globals';
import { choice, day, id, parseSearch, searchOf, text, whole, writeSearch } from './search.js';

const read = searchOf({
  q: text(5),
  sort: choice('expiry', 'value'),
  lotId: id,
  from: day,
  packs: whole(1, 10),
});

const ID = '01900000-0000-7000-8000-000000000001';

describe('the state in an address', () => {
  it('is what the screen reads from it', () => {
    const search = { q: 'body', sort: 'expiry', lotId: ID, from: '2026-05-04', packs: '2' };
    expect(read({ ...search, other: 'left out' })).toEqual(search);
  });

  it.each([
    ['q', ' '],
    ['q', 'longer'],
    ['sort', 'colour'],
    ['lotId', 'x'],
    ['from', '2026-13-40'],
    ['from', '4.5.2026'],
    ['packs', '0'],
    ['packs', '11'],
    ['packs', '1e1'],
    ['q', 5],
  ])('does not count %s when it is %j', (name, value) => {
    expect(read({ [name]: value })).toEqual({});
  });

  it('replaces what is not valid, so that the router cannot let it through', () => {
    expect('packs' in read({ packs: '-5' })).toBe(true);
  });

  it('is written in plain words and read back', () => {
    const written = writeSearch({ kind: 'open shortfall', q: 'ä&=', cursor: undefined, empty: '' });
    expect(written).toBe('?kind=open+shortfall&q=%C3%A4%26%3D');
    expect(parseSearch(written)).toEqual({ kind: 'open shortfall', q: 'ä&=' });
    expect(writeSearch({})).toBe('');
  });
});
