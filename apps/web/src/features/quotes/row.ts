import {
  CAVITY_CLASSES,
  type CavityClass,
  type CavitySize,
  cavityClassFits,
  formatSurfaces,
  formatTooth,
  ISO_TEETH,
  type IsoTooth,
  isAnterior,
  parseSurfaces,
  parseTooth,
  type Reason,
  type Surface,
  type ToothNotation,
} from '#lib/dentition';

/** One planned restoration as it is typed. */
export interface Row {
  /** Stays while rows come and go. */
  readonly key: number;
  /** In the practice's own notation. */
  readonly tooth: string;
  readonly surfaces: string;
  readonly reason: Reason;
  readonly templateId: string;
  /** '' where there is no cavity, as for a veneer. */
  readonly cavityClass: CavityClass | '';
  /** False while the class follows the surfaces. */
  readonly classChosen: boolean;
  readonly size: CavitySize;
  /** '' for what the practice asks. */
  readonly fee: string;
  /** '' for what the template plans. */
  readonly minutes: string;
  readonly shades: readonly string[];
  readonly withoutAnaesthetic: boolean;
  /** '' for none. */
  readonly retakes: string;
  /** Of the cavity; '' for the planning values of class and size. */
  readonly lengthMm: string;
  readonly widthMm: string;
  readonly depthMm: string;
}

export const MOST_ROWS = 32;
export const MOST_SHADES = 4;

let keys = 0;

export function newRow(part: Partial<Row> = {}): Row {
  keys += 1;
  return {
    tooth: '',
    surfaces: '',
    reason: 'decay',
    templateId: '',
    cavityClass: '',
    classChosen: false,
    size: 'medium',
    fee: '',
    minutes: '',
    shades: [],
    withoutAnaesthetic: false,
    retakes: '',
    lengthMm: '',
    widthMm: '',
    depthMm: '',
    ...part,
    key: keys,
  };
}

/** Tooth and surfaces of a row as far as they can be read. */
export function placeOf(
  row: Pick<Row, 'tooth' | 'surfaces'>,
  notation: ToothNotation,
): { readonly tooth: IsoTooth | undefined; readonly surfaces: readonly Surface[] | undefined } {
  const tooth = parseTooth(row.tooth, notation);
  const read = tooth === undefined ? undefined : parseSurfaces(tooth, row.surfaces);
  return { tooth, surfaces: read?.ok === true ? read.surfaces : undefined };
}

/** The classes that these surfaces of this tooth can have. */
export function classesOf(row: Pick<Row, 'tooth' | 'surfaces'>, notation: ToothNotation) {
  const { tooth, surfaces } = placeOf(row, notation);
  if (tooth === undefined || surfaces === undefined) return [];
  return CAVITY_CLASSES.filter((cls) => cavityClassFits(tooth, surfaces, cls).ok);
}

/** The class that the surfaces leave no doubt about: a side that touches a neighbour decides. */
function plainClass(fit: readonly CavityClass[], surfaces: string): CavityClass | '' {
  const proximal = fit.find((cls) => cls === 'II' || cls === 'III' || cls === 'IV');
  if (proximal !== undefined) return proximal;
  if (surfaces === 'O') return 'I';
  return surfaces === 'F' ? 'V' : '';
}

/** A change of a row; the class follows the surfaces until a person has chosen one that fits. */
export function changed(row: Row, part: Partial<Row>, notation: ToothNotation): Row {
  const next = { ...row, ...part };
  const fit = classesOf(next, notation);
  const holds = next.cavityClass === '' || fit.includes(next.cavityClass);
  if (next.classChosen && holds) return next;
  const { surfaces } = placeOf(next, notation);
  if (surfaces === undefined) return { ...next, classChosen: false };
  const cavityClass = plainClass(fit, formatSurfaces(surfaces));
  return { ...next, classChosen: false, cavityClass };
}

/** Another one like the last, on the next tooth of its jaw: what a row of front teeth needs. */
export function nextRow(rows: readonly Row[], notation: ToothNotation): Row {
  const last = rows.at(-1);
  if (!last) return newRow();
  const { reason, templateId, shades, size, withoutAnaesthetic } = last;
  const from = parseTooth(last.tooth, notation);
  const taken = new Set(rows.map((row) => parseTooth(row.tooth, notation)));
  const tooth = from === undefined ? undefined : neighbours(from).find((each) => !taken.has(each));
  const sameKind = tooth !== undefined && isAnterior(tooth) === isAnterior(from ?? tooth);
  const row = newRow({ reason, templateId, shades, size, withoutAnaesthetic });
  if (tooth === undefined) return row;
  const surfaces = sameKind ? last.surfaces : '';
  return changed(row, { tooth: formatTooth(tooth, notation), surfaces }, notation);
}

/** The teeth of its jaw, from this one to the patient's left, then round again. */
function neighbours(tooth: IsoTooth): IsoTooth[] {
  const quadrant = Math.floor(tooth / 10);
  const [right, left] = QUADRANTS.find((pair) => pair.includes(quadrant)) ?? [1, 2];
  const of = (which: number) =>
    ISO_TEETH.filter((each) => Math.floor(each / 10) === which).toSorted((a, b) => a - b);
  const jaw = [...of(right).toReversed(), ...of(left)];
  const at = jaw.indexOf(tooth);
  return [...jaw.slice(at + 1), ...jaw.slice(0, at)];
}

/** Right and left of each jaw, as the patient has them. */
const QUADRANTS: readonly (readonly [number, number])[] = [
  [1, 2],
  [4, 3],
  [5, 6],
  [8, 7],
];
