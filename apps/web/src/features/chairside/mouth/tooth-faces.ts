import { archOf, type IsoTooth, isAnterior, quadrantOf, type Surface } from '#lib/dentition';

export type Side = 'top' | 'right' | 'bottom' | 'left' | 'middle';

/** Which face is drawn where: cheek side outwards, mesial towards the midline. */
export function facesOf(tooth: IsoTooth): Readonly<Record<Side, Surface>> {
  const quadrant = quadrantOf(tooth);
  const onLeftOfScreen = quadrant === 1 || quadrant === 4;
  const upper = archOf(tooth) === 'upper';
  return {
    top: upper ? 'F' : 'L',
    bottom: upper ? 'L' : 'F',
    left: onLeftOfScreen ? 'D' : 'M',
    right: onLeftOfScreen ? 'M' : 'D',
    middle: isAnterior(tooth) ? 'I' : 'O',
  };
}

const MOVES: Readonly<Record<string, Readonly<Record<Side, Side>>>> = {
  ArrowUp: { top: 'top', middle: 'top', bottom: 'middle', left: 'top', right: 'top' },
  ArrowDown: { top: 'middle', middle: 'bottom', bottom: 'bottom', left: 'bottom', right: 'bottom' },
  ArrowLeft: { left: 'left', middle: 'left', right: 'middle', top: 'left', bottom: 'left' },
  ArrowRight: { right: 'right', middle: 'right', left: 'middle', top: 'right', bottom: 'right' },
};

export function movedFrom(side: Side, key: string): Side | undefined {
  return MOVES[key]?.[side];
}

const LETTERS: Readonly<Record<string, string>> = { B: 'F', V: 'F', P: 'L' };

/** The face of this tooth that a letter names; other letters in use count as well. */
export function faceOfLetter(tooth: IsoTooth, typed: string): Surface | undefined {
  const letter = typed.toUpperCase();
  const wanted = LETTERS[letter] ?? letter;
  return Object.values(facesOf(tooth)).find((face) => face === wanted);
}
