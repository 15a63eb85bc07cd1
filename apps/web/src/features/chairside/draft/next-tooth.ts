import {
  archOf,
  ISO_TEETH,
  type IsoTooth,
  isAnterior,
  isPrimary,
  type Surface,
} from '#lib/dentition';
import type { RestorationDraft } from './draft.js';
import { withFittingClass } from './fitting-class.js';

/** One row of the chart: an arch of one dentition, from the patient's right to the left. */
export function rowOf(arch: 'upper' | 'lower', primary: boolean): IsoTooth[] {
  return ISO_TEETH.filter((tooth) => archOf(tooth) === arch && isPrimary(tooth) === primary);
}

/** The neighbour so many places on in its arch; undefined at the end of it. */
export function neighbour(tooth: IsoTooth, steps: number): IsoTooth | undefined {
  const row = rowOf(archOf(tooth), isPrimary(tooth));
  const at = row.indexOf(tooth) + steps;
  return at < 0 ? undefined : row[at];
}

/** The tooth across from this one: same place of the row in the other arch. */
export function opposite(tooth: IsoTooth): IsoTooth | undefined {
  const row = rowOf(archOf(tooth), isPrimary(tooth));
  const other = rowOf(archOf(tooth) === 'upper' ? 'lower' : 'upper', isPrimary(tooth));
  return other[row.indexOf(tooth)];
}

/** The same restoration on the next tooth; edge and chewing surface stand for each other. */
export function shiftedTo(of: RestorationDraft, key: string): RestorationDraft | undefined {
  const tooth = neighbour(of.tooth, 1);
  if (tooth === undefined) return undefined;
  const middle: Surface = isAnterior(tooth) ? 'I' : 'O';
  const surfaces = of.surfaces.map((each) => (each === 'I' || each === 'O' ? middle : each));
  // Another cavity: it was not measured, and does nothing again.
  const { lengthMm: _, widthMm: __, depthMm: ___, redoOf: ____, ...same } = of;
  return withFittingClass({ ...same, key, tooth, surfaces, attempts: 1 });
}
