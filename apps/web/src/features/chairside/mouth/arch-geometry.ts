import { archOf, type IsoTooth, toothKind } from '#lib/dentition';
import { rowOf } from '../draft/next-tooth.js';

/** The drawing: two shallow arches, seen as the dentist sees them. */
export const VIEW = { width: 760, height: 372 };

const CENTRE = { x: VIEW.width / 2, upper: 168, lower: 204 };
const RADIUS = { x: 322, y: 126 };

interface Size {
  /** Along the arch. */
  readonly width: number;
  /** From cheek to tongue. */
  readonly depth: number;
  /** How square the outline is. */
  readonly square: number;
}

const SIZES: Readonly<Record<ReturnType<typeof toothKind>, Size>> = {
  'central incisor': { width: 44, depth: 27, square: 2.4 },
  'lateral incisor': { width: 39, depth: 26, square: 2.2 },
  canine: { width: 41, depth: 34, square: 2 },
  'first premolar': { width: 41, depth: 42, square: 2.4 },
  'second premolar': { width: 41, depth: 42, square: 2.6 },
  'first molar': { width: 54, depth: 48, square: 3.4 },
  'second molar': { width: 52, depth: 47, square: 3.4 },
  'third molar': { width: 48, depth: 43, square: 3 },
};

const sizeOf = (tooth: IsoTooth): Size => SIZES[toothKind(tooth)];

export interface PlacedTooth {
  readonly tooth: IsoTooth;
  readonly x: number;
  readonly y: number;
  /** Degrees by which the drawing of the tooth is turned; its cheek side points outwards. */
  readonly turn: number;
  readonly width: number;
  readonly depth: number;
  readonly outline: string;
  readonly label: { readonly x: number; readonly y: number };
}

interface Point {
  readonly x: number;
  readonly y: number;
  readonly angle: number;
  readonly length: number;
}

const STEPS = 720;

/** The curve of an arch from the patient's right to the left, with the length up to each point. */
function curveOf(arch: 'upper' | 'lower'): Point[] {
  const down = arch === 'upper' ? -1 : 1;
  const points: Point[] = [];
  let length = 0;
  for (let step = 0; step <= STEPS; step += 1) {
    const angle = Math.PI - (step / STEPS) * Math.PI;
    const x = CENTRE.x + RADIUS.x * Math.cos(angle);
    const y = CENTRE[arch] + down * RADIUS.y * Math.sin(angle);
    const last = points.at(-1);
    if (last) length += Math.hypot(x - last.x, y - last.y);
    points.push({ x, y, angle, length });
  }
  return points;
}

/** A rounded outline between an oval and a square. */
function outlineOf(width: number, depth: number, square: number): string {
  const points = Array.from({ length: 40 }, (_, i) => {
    const angle = (i / 40) * 2 * Math.PI;
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    const bend = (value: number) => Math.sign(value) * Math.abs(value) ** (2 / square);
    return `${((width / 2) * bend(cos)).toFixed(1)} ${((depth / 2) * bend(sin)).toFixed(1)}`;
  });
  return `M${points.join('L')}Z`;
}

function place(tooth: IsoTooth, at: Point, scale: number): PlacedTooth {
  const upper = archOf(tooth) === 'upper';
  const nx = Math.cos(at.angle) / RADIUS.x;
  const ny = ((upper ? -1 : 1) * Math.sin(at.angle)) / RADIUS.y;
  const long = Math.hypot(nx, ny);
  const outward = { x: nx / long, y: ny / long };
  const { width, depth, square } = sizeOf(tooth);
  const wide = width * scale - 4;
  const away = depth / 2 + 15;
  return {
    tooth,
    x: at.x,
    y: at.y,
    turn: (Math.atan2(outward.y, outward.x) * 180) / Math.PI + 90,
    width: wide,
    depth,
    outline: outlineOf(wide, depth, square),
    label: { x: at.x + outward.x * away, y: at.y + outward.y * away },
  };
}

function placeRow(arch: 'upper' | 'lower', primary: boolean): PlacedTooth[] {
  const row = rowOf(arch, primary);
  const curve = curveOf(arch);
  const whole = curve.at(-1)?.length ?? 0;
  const wide = row.reduce((sum, tooth) => sum + sizeOf(tooth).width, 0);
  // Primary teeth are ten: they keep their size and sit in the middle of the arch.
  const scale = Math.min(1.2, (whole - 6) / wide);
  let at = (whole - wide * scale) / 2;
  return row.map((tooth) => {
    const middle = at + (sizeOf(tooth).width * scale) / 2;
    at += sizeOf(tooth).width * scale;
    const point = curve.find(({ length }) => length >= middle) ?? curve[0];
    if (!point) throw new Error('An arch has no curve');
    return place(tooth, point, scale);
  });
}

/** Both arches of the permanent or the primary teeth. */
export function placeTeeth(primary: boolean): PlacedTooth[] {
  return [...placeRow('upper', primary), ...placeRow('lower', primary)];
}
