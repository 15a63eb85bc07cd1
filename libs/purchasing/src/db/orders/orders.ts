import { newId, refuse, type Tx } from '#lib/platform';
import type { LineNow, OrderEventKind, OrderState } from '../../domain/orders/order-life.js';
import { ARRIVED } from './arrived.js';

export const SENDING_WAYS = ['e-mail', 'print', 'by hand'] as const;
export type SendingWay = (typeof SENDING_WAYS)[number];

/** A line as it is written; prices as decimal texts. */
export interface NewOrderLine {
  readonly id: string;
  readonly presentationId: string;
  readonly consumableId: string;
  readonly packs: number;
  readonly packPrice: string | null;
  readonly proposed: ProposedLine | null;
}

/** What the proposal of the day said of a line. */
export interface ProposedLine {
  readonly packs: number;
  readonly why: string;
  readonly figures: readonly {
    readonly name: string;
    readonly value: string;
    readonly unit: string;
  }[];
}

export interface NewOrder {
  readonly id: string;
  readonly supplierId: string;
  readonly reference: string | null;
  readonly note: string | null;
  readonly freight: string;
  readonly lines: readonly NewOrderLine[];
}

interface By {
  readonly personId: string;
  readonly at: Date;
}

/** Writes a draft under the next number of the practice, without gaps whoever writes at once. */
export async function insertOrder(tx: Tx, order: NewOrder, by: By): Promise<void> {
  await holdOrders(tx);
  await tx.query(
    `INSERT INTO orders (id, practice_id, number, supplier_id, state, reference, note, freight,
       created_by, created_at)
     SELECT $1, $2, coalesce(max(number), 0) + 1, $3, 'draft', $4, $5, $6, $7, $8
     FROM orders WHERE practice_id = $2`,
    [
      ...[order.id, tx.practiceId, order.supplierId, order.reference, order.note, order.freight],
      ...[by.personId, by.at],
    ],
  );
  await insertLines(tx, order.id, order.lines, 1);
}

/** One at a time in a practice: who takes the next number, or a part of the month's budget. */
export async function holdOrders(tx: Tx): Promise<void> {
  await tx.query(`SELECT pg_advisory_xact_lock(hashtextextended('orders ' || $1, 0))`, [
    tx.practiceId,
  ]);
}

async function insertLines(
  tx: Tx,
  orderId: string,
  lines: readonly NewOrderLine[],
  from: number,
): Promise<void> {
  const rows = lines.map((line, i) => ({
    ...{ id: line.id, line_number: from + i, presentation_id: line.presentationId },
    ...{ consumable_id: line.consumableId, packs: line.packs, pack_price: line.packPrice },
    ...{ proposed_packs: line.proposed?.packs ?? null, why: line.proposed?.why ?? null },
    figures: line.proposed?.figures ?? null,
  }));
  await tx.query(
    `INSERT INTO order_lines (id, practice_id, order_id, line_number, presentation_id,
       consumable_id, packs, pack_price, proposed_packs, why, figures)
     SELECT id, $1, $2, line_number, presentation_id, consumable_id, packs, pack_price,
       proposed_packs, why, figures
     FROM jsonb_to_recordset($3::jsonb) AS x (id uuid, line_number integer, presentation_id uuid,
       consumable_id uuid, packs integer, pack_price numeric, proposed_packs integer, why text,
       figures jsonb)`,
    [tx.practiceId, orderId, JSON.stringify(rows)],
  );
}

/** Puts these lines in the place of those the order has; a line that stays keeps its id and its why. */
export async function replaceLines(
  tx: Tx,
  orderId: string,
  lines: readonly NewOrderLine[],
  known: ReadonlySet<string>,
): Promise<void> {
  const ids = lines.map((line) => line.id);
  await tx.query('DELETE FROM order_lines WHERE order_id = $1 AND NOT id = ANY ($2::uuid[])', [
    orderId,
    ids,
  ]);
  // Out of the way first, because two lines may have changed places.
  await tx.query('UPDATE order_lines SET line_number = line_number + 1000 WHERE order_id = $1', [
    orderId,
  ]);
  const stay = lines
    .map((line, i) => ({ line, number: i + 1 }))
    .filter((e) => known.has(e.line.id));
  await tx.query(
    `UPDATE order_lines o SET line_number = x.number, packs = x.packs, pack_price = x.price
     FROM unnest($2::uuid[], $3::integer[], $4::integer[], $5::numeric[])
       AS x (id, number, packs, price)
     WHERE o.order_id = $1 AND o.id = x.id`,
    [
      orderId,
      stay.map(({ line }) => line.id),
      stay.map(({ number }) => number),
      stay.map(({ line }) => line.packs),
      stay.map(({ line }) => line.packPrice),
    ],
  );
  for (const [i, line] of lines.entries()) {
    if (!known.has(line.id)) await insertLines(tx, orderId, [line], i + 1);
  }
}

export interface HeldOrder {
  readonly id: string;
  readonly number: number;
  readonly supplierId: string;
  readonly state: OrderState;
  readonly version: number;
  readonly freight: string;
  readonly orderedOn: string | null;
  readonly expectedOn: string | null;
  readonly reference: string | null;
  readonly note: string | null;
  readonly lines: readonly HeldLine[];
}

export interface HeldLine extends LineNow {
  readonly lineNumber: number;
  readonly presentationId: string;
  readonly consumableId: string;
  readonly packPrice: string | null;
}

const HOLD = `SELECT id, number, supplier_id AS "supplierId", state, version, freight,
  ordered_on AS "orderedOn", expected_on AS "expectedOn", reference, note
  FROM orders WHERE practice_id = $1 AND id = $2 FOR UPDATE`;

const LINES = `
SELECT ol.id, ol.line_number AS "lineNumber", ol.presentation_id AS "presentationId",
       ol.consumable_id AS "consumableId", ol.packs, ol.pack_price AS "packPrice",
       ol.cancelled_packs AS cancelled, a.packs AS received
FROM order_lines ol JOIN presentations p ON p.id = ol.presentation_id
CROSS JOIN LATERAL (${ARRIVED}) a
WHERE ol.practice_id = $1 AND ol.order_id = $2 ORDER BY ol.line_number`;

/** An order that nobody else changes, or books deliveries against, until this transaction ends. */
export async function holdOrder(tx: Tx, id: string): Promise<HeldOrder> {
  const [row] = await tx.query<Omit<HeldOrder, 'lines'>>(HOLD, [tx.practiceId, id]);
  if (!row) throw refuse('not_found', 'There is no order with this id.');
  return { ...row, lines: await tx.query<HeldLine>(LINES, [tx.practiceId, id]) };
}

/** What may change on an order besides its lines; what is left out stays as it is. */
export interface OrderChanges {
  readonly state?: OrderState;
  readonly supplier_id?: string;
  readonly reference?: string | null;
  readonly note?: string | null;
  readonly freight?: string;
  readonly approved_by?: string | null;
  readonly approved_at?: Date | null;
  readonly approved_total?: string | null;
  readonly ordered_on?: string;
  readonly expected_on?: string;
  readonly sent_by?: string;
  readonly sent_way?: SendingWay;
}

export const NOT_APPROVED = { approved_by: null, approved_at: null, approved_total: null };

/** Writes the changes and counts the version up. */
export async function saveOrder(tx: Tx, id: string, changes: OrderChanges): Promise<void> {
  const entries = Object.entries(changes);
  const set = entries.map(([column], i) => `${column} = $${i + 2}`);
  await tx.query(
    `UPDATE orders SET ${[...set, 'version = version + 1'].join(', ')} WHERE id = $1`,
    [id, ...entries.map(([, value]) => value as unknown)],
  );
}

export async function saveCancelled(tx: Tx, lines: readonly LineNow[]): Promise<void> {
  await tx.query(
    `UPDATE order_lines o SET cancelled_packs = x.packs
     FROM unnest($1::uuid[], $2::integer[]) AS x (id, packs)
     WHERE o.id = x.id AND o.cancelled_packs <> x.packs`,
    [lines.map((line) => line.id), lines.map((line) => line.cancelled)],
  );
}

export interface NewOrderEvent {
  readonly kind: OrderEventKind;
  readonly note?: string | null;
  readonly details?: Readonly<Record<string, unknown>>;
}

/** Ids are in the order in which they are made, so events of one moment stay in their order. */
export async function addEvents(
  tx: Tx,
  orderId: string,
  events: readonly NewOrderEvent[],
  by: By,
): Promise<void> {
  for (const { kind, note, details } of events) {
    await tx.query(
      `INSERT INTO order_events (id, practice_id, order_id, kind, note, person_id, happened_at,
         details) VALUES ($1, $2, $3, $4, $5, $6, $7, $8)`,
      [
        ...[newId(), tx.practiceId, orderId, kind, note ?? null, by.personId, by.at],
        details === undefined ? null : JSON.stringify(details),
      ],
    );
  }
}
