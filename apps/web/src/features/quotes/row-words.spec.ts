import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { CAVITY_SIZES, ISO_TEETH, isAnterior, REASONS } from '#lib/dentition';
import { longId, shortId } from './compact-id.js';
import { changed, newRow, nextRow, type Row } from './row.js';
import { readRows, writeRows } from './row-words.js';

const id = fc.uuid();
const rows = fc
  .array(
    fc.record({
      tooth: fc.constantFrom(...ISO_TEETH),
      reason: fc.constantFrom(...REASONS),
      size: fc.constantFrom(...CAVITY_SIZES),
      templateId: id,
      fee: fc.constantFrom('', '0', '250', '250.5', '1234.56'),
      minutes: fc.constantFrom('', '0', '45'),
      shades: fc.array(id, { maxLength: 4 }),
      withoutAnaesthetic: fc.boolean(),
      retakes: fc.constantFrom('', '1', '9'),
      lengthMm: fc.constantFrom('', '4', '100'),
      widthMm: fc.constantFrom('', '3.5'),
      depthMm: fc.constantFrom('', '2.125'),
    }),
    { maxLength: 8 },
  )
  .map((list) =>
    list.map(({ tooth, ...more }) => {
      const surfaces = isAnterior(tooth) ? 'MI' : 'MO';
      return changed(newRow(more), { tooth: String(tooth), surfaces }, 'iso');
    }),
  );

const plain = (list: readonly Row[]) => list.map(({ key: _, classChosen: __, ...row }) => row);

describe('planned restorations in an address', () => {
  it('are read as they were written', () => {
    fc.assert(
      fc.property(rows, (list) => {
        const words = writeRows(list, 'iso');
        expect(plain(readRows(words, 'iso'))).toEqual(plain(list));
        // Nothing in it has to be escaped in an address.
        expect(new URLSearchParams({ r: words }).toString()).toBe(`r=${words}`);
      }),
    );
  });

  it('say what is seldom said after class and size, and nothing where an old one says nothing', () => {
    const templateId = crypto.randomUUID();
    const row = newRow({ tooth: '11', surfaces: 'M', templateId, retakes: '2', depthMm: '2,5' });
    const words = writeRows([{ ...row, withoutAnaesthetic: true }], 'iso');
    expect(words).toBe(`11.M.d.0mnx2d2p5.${shortId(templateId)}..`);
    const old = readRows(`11.M.d.3m.${shortId(templateId)}.250.45`, 'iso');
    expect(old).toMatchObject([
      { retakes: '', withoutAnaesthetic: false, depthMm: '', fee: '250' },
    ]);
    const odd = readRows(`11.M.d.3mx99.${shortId(templateId)}.250.45`, 'iso');
    expect(odd).toMatchObject([{ retakes: '', cavityClass: 'III', size: 'medium', fee: '250' }]);
  });

  it('write an id once', () => {
    const templateId = crypto.randomUUID();
    const row = newRow({ tooth: '11', surfaces: 'M', templateId, shades: [templateId] });
    const words = writeRows([row, row], 'iso');
    expect(words).toBe(`11.M.d.0m.${shortId(templateId)}...0*11.M.d.0m.0...0`);
  });

  it('are left out where they cannot be read, whatever stands there', () => {
    fc.assert(fc.property(fc.string(), (text) => readRows(text, 'iso').length >= 0));
    expect(readRows('99.M.d.0m.x*11.Z.d.0m.x', 'iso')).toEqual([]);
    expect([longId('short'), longId('*'.repeat(22))]).toEqual([undefined, undefined]);
  });

  it('name teeth alike in every notation', () => {
    const row = newRow({ tooth: '8', surfaces: 'M', templateId: crypto.randomUUID() });
    expect(writeRows([row], 'universal')).toMatch(/^11\.M\./);
  });
});

describe('another restoration', () => {
  it('is on the next tooth of the jaw, from right to left, with the same work', () => {
    const first = changed(newRow({ reason: 'cosmetic' }), { tooth: '12', surfaces: 'M' }, 'iso');
    const second = nextRow([first], 'iso');
    expect(second).toMatchObject({
      tooth: '11',
      surfaces: 'M',
      reason: 'cosmetic',
      cavityClass: 'III',
    });
    expect(nextRow([first, second], 'iso').tooth).toBe('21');
    // A back tooth has other surfaces than a front tooth.
    const canine = changed(newRow(), { tooth: '23', surfaces: 'MI' }, 'iso');
    expect(nextRow([canine], 'iso')).toMatchObject({ tooth: '24', surfaces: '' });
  });
});
