import { describe, expect, it } from '@jest/globals';
import type { Arrival } from './api/list-arrivals.js';
import type { LotTrace, TracedMovement, VisitTrace } from './api/trace-lot.js';
import { layOut } from './lay-out.js';
import { pathOf } from './path.js';
import { teethOf, useRows } from './uses.js';

const moved = (from: string | null, to: string | null, quantity: string) =>
  ({ from, to, quantity }) as TracedMovement;

const arrival = (layerId: string, to: string, quantity: string, more: object = {}) =>
  ({
    ...{ layerId, quantity, reversesId: null, reversedById: null },
    ...{ from: { account: 'supplier' }, to: { account: 'location', words: to } },
    ...more,
  }) as Arrival;

const trace = {
  lot: { layers: [{ layerId: 'l1', supplier: { name: 'Northgate' }, receivedOn: '2026-01-05' }] },
  moves: [
    moved('Store', 'Room 1', '8'),
    moved('Room 1', 'Store', '1'),
    moved('Room 1', 'Room 1', '1'),
  ],
  waste: [moved('Store', null, '2')],
  returns: [moved('Store', null, '1')],
  countDifferences: [moved('Store', null, '0.5'), moved(null, 'Room 1', '-0.25')],
  onHand: [
    { location: { name: 'Store' }, onHand: '9.5' },
    { location: { name: 'Room 1' }, onHand: '3' },
  ],
} as unknown as LotTrace;

const arrivals = [
  arrival('l1', 'Store', '20'),
  arrival('l1', 'Store', '20', { reversedById: 'x' }),
  arrival('l1', 'Store', '20', { reversesId: 'y' }),
];

describe('the path of a lot', () => {
  const path = pathOf(trace, arrivals);
  const said = path.links.map(({ from, to, amount }) => [from, to, Number(amount) / 1e6]);

  it('goes from the delivery over places to the ends, with what is left of to and fro', () => {
    expect(said).toContainEqual(['delivery l1', 'place Store', 20]);
    expect(said).toContainEqual(['place Store', 'place Room 1', 7]);
    expect(said).toContainEqual(['place Store', 'end wasted', 2]);
    expect(said).toContainEqual(['place Store', 'end missing', 0.5]);
    expect(said).toContainEqual(['found', 'place Room 1', 0.25]);
    expect(said).not.toContainEqual(['place Room 1', 'place Room 1', 1]);
  });

  it('was used where it came and went nowhere else', () => {
    expect(said).toContainEqual(['place Room 1', 'end used', 4.25]);
    expect(said.filter(([, to]) => to === 'end used')).toHaveLength(1);
  });

  it('has nodes that carry something, and knows where deliveries arrive', () => {
    expect(path.nodes.map((node) => node.id)).toEqual([
      ...['delivery l1', 'found', 'place Store', 'place Room 1'],
      ...['end used', 'end onHand', 'end wasted', 'end returned', 'end missing'],
    ]);
    expect(path.nodes.find((node) => node.id === 'place Store')).toMatchObject({ arrival: true });
    expect(path.nodes.find((node) => node.id === 'place Room 1')).toMatchObject({ arrival: false });
  });

  it('is drawn within its width, nothing on top of anything', () => {
    const drawing = layOut(path, 760);
    expect(drawing.links).toHaveLength(path.links.length);
    for (const { x, y, high } of drawing.nodes) {
      expect(x).toBeGreaterThanOrEqual(0);
      expect(x).toBeLessThanOrEqual(600);
      expect(y).toBeGreaterThanOrEqual(0);
      expect(y + high).toBeLessThanOrEqual(drawing.height + 0.001);
    }
    for (const { x } of drawing.nodes) {
      const column = drawing.nodes.filter((node) => node.x === x);
      column.slice(1).forEach((node, at) => {
        expect(node.y).toBeGreaterThanOrEqual((column[at]?.y ?? 0) + (column[at]?.high ?? 0));
      });
    }
  });

  it('of nothing is nothing', () => {
    expect(layOut({ nodes: [], links: [] }, 760)).toMatchObject({ height: 0, nodes: [] });
  });

  it('goes round when it leads back', () => {
    const place = (name: string) =>
      ({ id: name, kind: 'place', name, arrival: true, amount: 1_000_000n }) as const;
    const links = [{ from: 'A', to: 'B', amount: 1_000_000n }];
    const [line] = layOut({ nodes: [place('A'), place('B')], links }, 760).links;
    expect(line?.d).toMatch(/^M10\.0 .* 10\.0 [\d.]+$/);
  });
});

describe('the rows of visits', () => {
  const use = { usageLineId: 'u', delivery: { layerId: 'l' }, sureness: 'scanned' };
  const visit = (visitId: string, uses: object[]) => ({ visitId, uses }) as unknown as VisitTrace;

  it('are one a use, and one for a visit of which nothing counts', () => {
    const rows = useRows([visit('v1', [use, { ...use, sureness: 'assumed' }]), visit('v2', [])]);
    expect(rows.map(({ id }) => id)).toEqual(['u l scanned', 'u l assumed', 'v2']);
    expect(rows[2]?.use).toBeUndefined();
  });

  it('say teeth with their surfaces', () => {
    const teeth = [
      { tooth: '11', surfaces: 'M' },
      { tooth: '21', surfaces: '' },
    ];
    expect(teethOf(teeth)).toBe('11 M, 21');
  });
});
