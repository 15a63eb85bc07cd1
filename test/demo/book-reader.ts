import { formatQuantity, type Quantity, quantity } from '#lib/measure';
import type { Tx, UnitOfWork } from '#lib/platform';
import { demoId } from './dice.js';
import type { LotRef, Pick } from './steps.js';

export const PRACTICE_ID = demoId('practice');

export function locationId(place: string): string {
  return demoId('location', place);
}

/** The key under which a step is booked: it says for which day the scenario was made. */
export function bookingKey(day: string, stepKey: string): string {
  return `demo/${day}/${stepKey}`;
}

export interface Found {
  readonly holdingId: string;
  readonly onHand: Quantity;
}

/** Finds in the book what the scenario names in its own words. */
export class BookReader {
  private readonly lots = new Map<string, string>();
  private readonly ids = new Map<string, string>();

  constructor(private readonly uow: UnitOfWork) {}

  /** The goods as they lie in the book; undefined when none of them are left. */
  async holding(pick: Pick): Promise<Found | undefined> {
    const { layer, place, openedOn } = pick;
    const [row] = await this.read<{ id: string; on_hand: string }>(
      `SELECT h.id, h.on_hand
       FROM deliveries d
       JOIN layers l ON l.delivery_id = d.id AND l.line_number = $2
       JOIN holdings h ON h.layer_id = l.id
       WHERE d.reference = $1 AND h.location_id = $3 AND h.on_hand > 0
         AND h.opened_on IS NOT DISTINCT FROM $4::date
       ORDER BY h.id LIMIT 1`,
      [layer.reference, layer.line, locationId(place), openedOn],
    );
    return row && { holdingId: row.id, onHand: quantity(row.on_hand) };
  }

  async feeId(code: string): Promise<string> {
    return this.idOf(`fee ${code}`, 'SELECT id FROM fees WHERE code = $1', code);
  }

  async planId(name: string): Promise<string> {
    return this.idOf(`plan ${name}`, 'SELECT id FROM fee_plans WHERE name = $1', name);
  }

  private async idOf(what: string, sql: string, value: string): Promise<string> {
    const known = this.ids.get(what);
    if (known !== undefined) return known;
    const [row] = await this.read<{ id: string }>(sql, [value]);
    if (!row) throw new Error(`The ${what} is not in the book`);
    this.ids.set(what, row.id);
    return row.id;
  }

  async deliveryId(reference: string): Promise<string> {
    const [row] = await this.read<{ id: string }>(
      'SELECT id FROM deliveries WHERE reference = $1',
      [reference],
    );
    if (!row) throw new Error(`The delivery ${reference} is not in the book`);
    return row.id;
  }

  async lotId({ consumableId, lotNumber }: LotRef): Promise<string> {
    const key = `${consumableId}/${lotNumber}`;
    const known = this.lots.get(key);
    if (known !== undefined) return known;
    const [row] = await this.read<{ id: string }>(
      'SELECT id FROM lots WHERE consumable_id = $1 AND lot_number = $2',
      [consumableId, lotNumber],
    );
    if (!row) throw new Error(`The lot ${lotNumber} is not in the book`);
    this.lots.set(key, row.id);
    return row.id;
  }

  async lotStatus(lotId: string): Promise<string | undefined> {
    const [row] = await this.read<{ status: string }>('SELECT status FROM lots WHERE id = $1', [
      lotId,
    ]);
    return row?.status;
  }

  /** Everything of the demo that is in the book by now: booking keys, and ids of master data. */
  async present(): Promise<Set<string>> {
    const rows = await this.read<{ name: string }>(
      `SELECT key AS name FROM idempotency_keys WHERE key LIKE 'demo/%'
       UNION ALL SELECT id::text FROM people
       UNION ALL SELECT id::text FROM suppliers
       UNION ALL SELECT id::text FROM locations
       UNION ALL SELECT id::text FROM consumables
       UNION ALL SELECT id::text FROM presentations
       UNION ALL SELECT template_id || '/' || version FROM template_versions`,
      [],
    );
    return new Set(rows.map((row) => row.name));
  }

  private read<Row extends object>(sql: string, values: unknown[]): Promise<Row[]> {
    return this.uow.read(PRACTICE_ID, (tx: Tx) => tx.query<Row>(sql, values));
  }
}

/** The day for which a book was begun, from its booking keys. */
export function dayOfBook(present: ReadonlySet<string>): string | undefined {
  for (const name of present) {
    const day = /^demo\/(\d{4}-\d\d-\d\d)\//.exec(name)?.[1];
    if (day !== undefined) return day;
  }
  return undefined;
}

/** As much as is wanted, or what is there. */
export function atMost(wanted: string, found: Found): string {
  const amount = quantity(wanted);
  return formatQuantity(amount < found.onHand ? amount : found.onHand);
}
