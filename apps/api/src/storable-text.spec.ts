import { describe, expect, it } from '@jest/globals';
import { unstorableField } from './storable-text.js';

const inBody = (body: unknown) => unstorableField({ body, query: {}, params: {} });

describe('text that cannot be stored', () => {
  it.each<[unknown, string]>([
    ['a\0', 'body'],
    [{ note: 'a\0' }, 'note'],
    [{ lines: [{ note: 'fine' }, { note: '\0' }] }, 'lines[1].note'],
    [{ lines: [{ note: 'half \ud83d of it' }] }, 'lines[0].note'],
    [{ '\ud83d': 1 }, 'body'],
    [[['\udc00']], '[0][0]'],
  ])('is found in %j', (body, field) => expect(inBody(body)).toBe(field));

  it.each<unknown>([undefined, null, 1, 'é 😀', { a: ['tab\t', { b: 'x' }] }, [], {}])(
    'is not in %j',
    (body) => expect(inBody(body)).toBeUndefined(),
  );

  it('is looked for in the path and the query too', () => {
    expect(unstorableField({ body: null, query: { q: '\0' }, params: {} })).toBe('q');
    expect(unstorableField({ body: null, query: {}, params: { id: '\0' } })).toBe('id');
  });
});
