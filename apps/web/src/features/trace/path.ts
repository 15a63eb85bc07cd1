import { micro } from '../../ui/drawn.js';
import type { Arrival } from './api/list-arrivals.js';
import type { LotTrace } from './api/trace-lot.js';

/** Where a lot may end. */
export type End = 'used' | 'onHand' | 'wasted' | 'returned' | 'missing';

export type PathNode = { readonly id: string; readonly amount: bigint } & (
  | { readonly kind: 'delivery'; readonly supplier: string; readonly receivedOn: string }
  | { readonly kind: 'found' }
  | { readonly kind: 'place'; readonly name: string; readonly arrival: boolean }
  | { readonly kind: 'end'; readonly end: End }
);

export interface PathLink {
  readonly from: string;
  readonly to: string;
  readonly amount: bigint;
}

export interface Path {
  readonly nodes: readonly PathNode[];
  readonly links: readonly PathLink[];
}

const ENDS = ['used', 'onHand', 'wasted', 'returned', 'missing'] as const;

/** Quantities from one thing to another, added up. */
class Flows {
  private readonly amounts = new Map<string, bigint>();

  add(from: string, to: string, amount: bigint): void {
    const key = JSON.stringify([from, to]);
    this.amounts.set(key, (this.amounts.get(key) ?? 0n) + amount);
  }

  /** Carried to and fro: only what is left of it. */
  net(): PathLink[] {
    return [...this.amounts].flatMap(([key, there]) => {
      const [from, to] = JSON.parse(key) as [string, string];
      const back = this.amounts.get(JSON.stringify([to, from])) ?? 0n;
      return there > back ? [{ from, to, amount: there - back }] : [];
    });
  }
}

const placeId = (name: string | null) => `place ${name ?? ''}`;

function addMovements(flows: Flows, trace: LotTrace): void {
  for (const { from, to, quantity } of trace.moves) {
    if (from !== to) flows.add(placeId(from), placeId(to), micro(quantity));
  }
  for (const { from, quantity } of trace.waste)
    flows.add(placeId(from), 'end wasted', micro(quantity));
  for (const { from, quantity } of trace.returns)
    flows.add(placeId(from), 'end returned', micro(quantity));
  for (const { from, to, quantity } of trace.countDifferences) {
    const missing = micro(quantity);
    if (missing > 0n) flows.add(placeId(from), 'end missing', missing);
    else flows.add('found', placeId(to), -missing);
  }
  for (const { location, onHand } of trace.onHand)
    flows.add(placeId(location.name), 'end onHand', micro(onHand));
}

/**
 * From the deliveries over places to the ends. Which place a visit took it from follows from the
 * balance of the place: whatever came there and went nowhere else was used there.
 */
export function pathOf(trace: LotTrace, arrivals: readonly Arrival[]): Path {
  const flows = new Flows();
  const arrived = new Set<string>();
  for (const { layerId, from, to, quantity, reversesId, reversedById } of arrivals) {
    if (from.account !== 'supplier' || reversesId !== null || reversedById !== null) continue;
    arrived.add(placeId(to.words));
    flows.add(`delivery ${layerId}`, placeId(to.words), micro(quantity));
  }
  addMovements(flows, trace);
  const carried = flows.net();
  const sum = (id: string, side: 'from' | 'to') =>
    carried.reduce((all, link) => (link[side] === id ? all + link.amount : all), 0n);
  const places = [...new Set(carried.flatMap(({ from, to }) => [from, to]))].filter((id) =>
    id.startsWith('place '),
  );
  const used = places.flatMap((from) => {
    const amount = sum(from, 'to') - sum(from, 'from');
    return amount > 0n ? [{ from, to: 'end used', amount }] : [];
  });
  const links = [...carried, ...used];
  return { links, nodes: nodesOf(trace, links, arrived) };
}

function nodesOf(
  trace: LotTrace,
  links: readonly PathLink[],
  arrived: ReadonlySet<string>,
): PathNode[] {
  const amountOf = (id: string) => {
    const sum = (side: 'from' | 'to') =>
      links.reduce((all, link) => (link[side] === id ? all + link.amount : all), 0n);
    const [into, out] = [sum('to'), sum('from')];
    return into > out ? into : out;
  };
  const places = new Set(links.flatMap(({ from, to }) => [from, to]));
  const nodes: PathNode[] = [
    ...trace.lot.layers.map((layer) => ({
      ...{ id: `delivery ${layer.layerId}`, kind: 'delivery' as const },
      ...{ supplier: layer.supplier.name, receivedOn: layer.receivedOn },
      amount: amountOf(`delivery ${layer.layerId}`),
    })),
    { id: 'found', kind: 'found', amount: amountOf('found') },
    ...[...places]
      .filter((id) => id.startsWith('place '))
      .map((id) => ({
        ...{ id, kind: 'place' as const, name: id.slice('place '.length) },
        ...{ arrival: arrived.has(id), amount: amountOf(id) },
      })),
    ...ENDS.map((end) => ({
      ...{ id: `end ${end}`, kind: 'end' as const, end },
      amount: amountOf(`end ${end}`),
    })),
  ];
  return nodes.filter((node) => node.amount > 0n);
}
