import { drawnShare } from '../../ui/drawn.js';
import type { Path, PathLink, PathNode } from './path.js';

export interface PlacedNode {
  readonly node: PathNode;
  readonly x: number;
  readonly y: number;
  readonly high: number;
}

export interface PlacedLink {
  readonly link: PathLink;
  readonly d: string;
  readonly wide: number;
}

export interface Drawing {
  readonly width: number;
  readonly height: number;
  /** From one column to the next. */
  readonly apart: number;
  readonly nodes: readonly PlacedNode[];
  readonly links: readonly PlacedLink[];
}

export const BAR = 10;
/** Two lines of words beside a bar. */
const LEAST = 40;
const GAP = 14;
/** How high the largest column may grow for its quantities alone. */
const HIGH = 240;
/** Room for the words at the right of the last column. */
const WORDS = 190;

function columnOf(node: PathNode): number {
  if (node.kind === 'place') return node.arrival ? 1 : 2;
  return node.kind === 'end' ? 3 : 0;
}

/** Columns from left to right, bars as high as their quantities, lines as wide as theirs. */
export function layOut(path: Path, width: number): Drawing {
  const columns = [0, 1, 2, 3]
    .map((column) => path.nodes.filter((node) => columnOf(node) === column))
    .filter((nodes) => nodes.length > 0);
  const whole = columns.reduce((most, nodes) => {
    const sum = nodes.reduce((all, node) => all + node.amount, 0n);
    return sum > most ? sum : most;
  }, 0n);
  const high = (amount: bigint) => Math.max(drawnShare(amount, whole) * HIGH, 2);
  const slot = (node: PathNode) => Math.max(high(node.amount), LEAST);
  const tall = (nodes: readonly PathNode[]) =>
    nodes.reduce((sum, node) => sum + slot(node) + GAP, -GAP);
  const height = Math.max(0, ...columns.map(tall));
  const apart = columns.length < 2 ? 0 : (width - WORDS - BAR) / (columns.length - 1);
  const nodes = columns.flatMap((column, at) => {
    let y = (height - tall(column)) / 2;
    return column.map((node): PlacedNode => {
      const placed = { node, x: at * apart, y, high: high(node.amount) };
      y += slot(node) + GAP;
      return placed;
    });
  });
  return { width, height, apart, nodes, links: lines(path.links, nodes, high) };
}

function lines(
  links: readonly PathLink[],
  nodes: readonly PlacedNode[],
  high: (amount: bigint) => number,
): PlacedLink[] {
  const at = new Map(nodes.map((placed) => [placed.node.id, placed]));
  const ends = links.flatMap((link) => {
    const [from, to] = [at.get(link.from), at.get(link.to)];
    return from && to ? [{ link, from, to, wide: high(link.amount) }] : [];
  });
  const [leaving, arriving] = [new Map<string, number>(), new Map<string, number>()];
  const take = (used: Map<string, number>, id: string, wide: number) => {
    const before = used.get(id) ?? 0;
    used.set(id, before + wide);
    return before + wide / 2;
  };
  const starts = new Map<PathLink, number>();
  for (const { link, from, wide } of [...ends].sort((a, b) => a.to.y - b.to.y))
    starts.set(link, from.y + take(leaving, link.from, wide));
  return [...ends]
    .sort((a, b) => a.from.y - b.from.y)
    .map(({ link, from, to, wide }) => {
      const y1 = starts.get(link) ?? from.y;
      const y2 = to.y + take(arriving, link.to, wide);
      return { link, wide, d: curve(from.x + BAR, y1, to.x, y2) };
    });
}

const short = (n: number) => n.toFixed(1);

/** A line to the right bends once; one within a column or backwards goes round. */
function curve(x1: number, y1: number, x2: number, y2: number): string {
  const forward = x2 > x1;
  const bend = forward ? (x2 - x1) / 2 : 60;
  const end = forward ? x2 : x2 + BAR;
  const into = forward ? x2 - bend : end + bend;
  return `M${short(x1)} ${short(y1)}C${short(x1 + bend)} ${short(y1)} ${short(into)} ${short(y2)} ${short(end)} ${short(y2)}`;
}
