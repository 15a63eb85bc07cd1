import { randomUUID } from 'node:crypto';
import { expect } from '@jest/globals';
import type pg from 'pg';
import { deliveryLine } from '../book/book.js';
import type { PlanningBook } from './planning-book.js';

// What the service answers about what if, suppliers and replays; and orders that were sent.

interface Point {
  readonly level: string | null;
  readonly stockValue: string | null;
  readonly wastedValue: string | null;
  readonly stockOuts: string;
  readonly item: { reorderPoint: string; orderUpTo: string; averageStock: string } | null;
}

export interface Curve {
  readonly measure: string;
  readonly horizonDays: number;
  readonly items: number;
  readonly itemsWithoutPrice: number;
  readonly now: Point | null;
  readonly points: readonly Point[];
}

export interface Bulk {
  readonly [figure: string]: string;
}

export interface Suppliers {
  readonly since: string;
  readonly suppliers: readonly {
    readonly supplier: { id: string; name: string };
    readonly consumables: number;
    readonly shared: number;
    readonly cheapest: number;
    readonly lead: Record<string, number | null>;
    readonly reliability: Record<string, number>;
    readonly deliveries: number;
    readonly spend: string;
  }[];
  readonly consumables: readonly {
    readonly consumable: { id: string };
    readonly offers: readonly Record<string, unknown>[];
  }[];
}

export interface Replay {
  readonly id: string;
  readonly firstDay: string;
  readonly lastDay: string;
  readonly state: string;
  readonly progress: string;
  readonly failure: string | null;
  readonly result: {
    readonly computed: Sums;
    readonly old: Sums;
    readonly items: readonly {
      readonly consumable: { id: string };
      readonly oldRule: string;
      readonly computed: { stockOutDays: number; averageValue: string | null };
      readonly old: { stockOutDays: number; averageValue: string | null };
    }[];
    readonly weeks: readonly { day: string }[];
  } | null;
}

interface Sums {
  readonly stockOutDays: number;
  readonly averageValue: string;
  readonly orders: number;
  readonly sent: number;
  readonly freight: string;
}

/** An order that was sent, with one line of bibs; answers with the id of the line. */
export async function sentOrder(
  { owner, s }: { readonly owner: pg.Client; readonly s: PlanningBook },
  order: { readonly supplier: string; readonly day: string; readonly expected: string },
  packs: number,
): Promise<string> {
  const { supplier, day, expected } = order;
  const [id, line] = [randomUUID(), randomUUID()];
  const { practiceId, personId } = s.book.practice.owner;
  const by = [practiceId, id, supplier, personId, day, expected];
  await owner.query(
    `INSERT INTO orders (practice_id, id, number, supplier_id, state, freight, created_by,
       created_at, approved_by, approved_at, approved_total, ordered_on, expected_on, sent_by,
       sent_way)
     SELECT $1::uuid, $2, coalesce(max(number), 0) + 1, $3, 'sent', 0, $4, now(), $4, now(), 0,
       $5, $6, $4, 'print' FROM orders WHERE practice_id = $1::uuid`,
    by,
  );
  await owner.query(
    `INSERT INTO order_lines (id, practice_id, order_id, line_number, presentation_id,
       consumable_id, packs) VALUES ($1, $2, $3, 1, $4, $5, $6)`,
    [line, practiceId, id, s.bibBox.presentation, s.bib.id, packs],
  );
  return line;
}

/** Asks until it is over; there is no half result. */
export async function endedReplay(ask: () => Promise<Replay>): Promise<Replay> {
  for (;;) {
    const replay = await ask();
    if (replay.state !== 'running') return replay;
    expect(replay.result).toBeNull();
    await new Promise((resolve) => setTimeout(resolve, 30));
  }
}

export async function freightOfSupplier(s: PlanningBook, freight: string): Promise<void> {
  const workingDays = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday'];
  const terms = { leadDays: 3, freight, workingDays };
  await s.book.done('PUT', `/reorder/settings/suppliers/${s.supplier}`, terms);
}

/** The delivery of the new shade bore another lot number than was booked. */
export async function newShadeUnderAnotherLot(at: {
  readonly owner: pg.Client;
  readonly s: PlanningBook;
}): Promise<void> {
  const { owner, s } = at;
  const { rows } = await owner.query<{ delivery: string; line: number }>(
    `SELECT delivery_id AS delivery, line_number AS line FROM layers
     WHERE practice_id = $1 AND consumable_id = $2`,
    [s.book.practice.owner.practiceId, s.newShade.id],
  );
  const [{ delivery = '', line = 0 } = {}] = rows;
  await s.book.done('POST', `/deliveries/${delivery}/lines/${line}/correction`, {
    ...deliveryLine(s.newShade, s.store, 3, '70', { lotNumber: 'N-7', expiresOn: '2027-06-30' }),
    note: 'The 1 was a 7.',
  });
}

/** The sums of a replay are the sums of its items, to the millionth. */
export function expectSidesAddUp(result: Replay['result']): void {
  for (const side of ['computed', 'old'] as const) {
    const days = result?.items.reduce((sum, item) => sum + item[side].stockOutDays, 0);
    expect(result?.[side].stockOutDays).toBe(days);
    const value = result?.items.reduce((sum, item) => {
      return sum + Math.round(Number(item[side].averageValue ?? 0) * 1e6);
    }, 0);
    expect(Math.round(Number(result?.[side].averageValue) * 1e6)).toBe(value);
    // Every order to the one supplier paid its freight of 6.50; others ask for none.
    const { freight = '', sent = 0 } = result?.[side] ?? {};
    expect(Number(freight)).toBeGreaterThan(0);
    expect(Number(freight)).toBeLessThanOrEqual(sent * 6.5);
    expect((Number(freight) / 6.5) % 1).toBeCloseTo(0, 9);
  }
}
