import { describe, expect, it } from '@jest/globals';
import { type IsoTooth, parseIsoTooth } from '#lib/dentition';
import { placeTeeth, VIEW } from './arch-geometry.js';
import { faceOfLetter, facesOf, movedFrom } from './tooth-faces.js';

function tooth(digits: number): IsoTooth {
  const found = parseIsoTooth(digits);
  if (found === undefined) throw new Error(`${digits} is not a tooth`);
  return found;
}

describe('the faces of a tooth', () => {
  it.each([
    [16, { top: 'F', bottom: 'L', left: 'D', right: 'M', middle: 'O' }],
    [21, { top: 'F', bottom: 'L', left: 'M', right: 'D', middle: 'I' }],
    [36, { top: 'L', bottom: 'F', left: 'M', right: 'D', middle: 'O' }],
    [43, { top: 'L', bottom: 'F', left: 'D', right: 'M', middle: 'I' }],
    [74, { top: 'L', bottom: 'F', left: 'M', right: 'D', middle: 'O' }],
  ])('of %i are drawn as the dentist sees them', (digits, faces) => {
    expect(facesOf(tooth(digits))).toEqual(faces);
  });

  it('are named by letters, also by those of other habits', () => {
    expect(faceOfLetter(tooth(16), 'b')).toBe('F');
    expect(faceOfLetter(tooth(16), 'P')).toBe('L');
    expect(faceOfLetter(tooth(16), 'i')).toBeUndefined();
    expect(faceOfLetter(tooth(11), 'i')).toBe('I');
  });

  it('are walked through with arrows', () => {
    expect(movedFrom('middle', 'ArrowUp')).toBe('top');
    expect(movedFrom('left', 'ArrowRight')).toBe('middle');
    expect(movedFrom('left', 'a')).toBeUndefined();
  });
});

describe('the drawing of the teeth', () => {
  it.each([
    [false, 32],
    [true, 20],
  ])('has them all, inside, in order, and none over another (primary: %s)', (primary, count) => {
    const teeth = placeTeeth(primary);
    expect(teeth).toHaveLength(count);
    for (const { x, y, label } of teeth) {
      for (const [at, most] of [
        [x, VIEW.width],
        [label.x, VIEW.width],
        [y, VIEW.height],
        [label.y, VIEW.height],
      ] as const) {
        expect(at).toBeGreaterThan(4);
        expect(at).toBeLessThan(most - 4);
      }
    }
    const upper = teeth.slice(0, count / 2);
    for (const [i, placed] of upper.entries()) {
      const next = upper[i + 1];
      if (next) expect(Math.hypot(next.x - placed.x, next.y - placed.y)).toBeGreaterThan(34);
      if (next) expect(next.x).toBeGreaterThan(placed.x);
    }
  });
});
