import type { Client } from 'pg';
import type { DataSource, EntityTarget, ObjectLiteral } from 'typeorm';
import { type Actor, newId, Refused, UnitOfWork } from '#lib/platform';
import { asOwner, createTestDatabase, testDataSource } from '../../../../test/harness/database.js';

/** An empty book with two practices in it. */
export interface Book {
  readonly uow: UnitOfWork;
  readonly dataSource: DataSource;
  /** Sees every row. */
  readonly owner: Client;
  readonly actor: Actor;
  /** Somebody of the other practice. */
  readonly stranger: Actor;
  close(): Promise<void>;
}

export async function openBook(entities: EntityTarget<ObjectLiteral>[]): Promise<Book> {
  const database = await createTestDatabase();
  const owner = await asOwner(database.url);
  const dataSource = await testDataSource(database.url, entities);
  return {
    uow: new UnitOfWork(dataSource),
    dataSource,
    owner,
    actor: await newPractice(owner, 'Harbour Dental'),
    stranger: await newPractice(owner, 'Hill Dental'),
    close: async () => {
      await dataSource.destroy();
      await owner.end();
      await database.drop();
    },
  };
}

async function newPractice(owner: Client, practiceName: string): Promise<Actor> {
  const [practiceId, personId] = [newId(), newId()];
  const signInName = `ada-${practiceId}`;
  await owner.query(
    `INSERT INTO practices (id, name, time_zone, currency) VALUES ($1, $2, 'Europe/Vienna', 'EUR')`,
    [practiceId, practiceName],
  );
  await owner.query(
    `INSERT INTO people (id, practice_id, display_name, sign_in_name, password_hash, role)
     VALUES ($1, $2, 'Ada', $3, 'x', 'manager')`,
    [personId, practiceId, signInName],
  );
  return {
    practiceId,
    practiceName,
    timeZone: 'Europe/Vienna',
    currency: 'EUR',
    toothNotation: 'iso',
    costShareKey: 'equal',
    expiryWarningDays: 60,
    personId,
    displayName: 'Ada',
    signInName,
    role: 'manager',
  };
}

/** The status, code and fields of a refusal. */
export async function refusal(work: Promise<unknown>): Promise<string> {
  try {
    await work;
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    return [error.kind.status, error.code, ...error.fields.map(({ field }) => field)].join(' ');
  }
  return 'not refused';
}

/** The audit trail of one thing. */
export async function audited(
  owner: Client,
  subjectId: string,
): Promise<{ action: string; details: object }[]> {
  const found = await owner.query<{ action: string; details: object }>(
    'SELECT action, details FROM audit_entries WHERE subject_id = $1 ORDER BY id',
    [subjectId],
  );
  return found.rows;
}

/** As if a delivery had brought ten stock units of it, to a place of its own. */
export async function receive(
  { owner, actor }: Book,
  consumableId: string,
  presentationId: string,
): Promise<{ locationId: string }> {
  const [supplier, locationId, lot, delivery, layer] = [0, 1, 2, 3, 4].map(() => newId());
  const statements = [
    `INSERT INTO suppliers (id, practice_id, name) VALUES ('${supplier}', $1, '${supplier}')`,
    `INSERT INTO locations (id, practice_id, name, kind)
     VALUES ('${locationId}', $1, '${locationId}', 'store')`,
    `INSERT INTO lots (id, practice_id, consumable_id) VALUES ('${lot}', $1, '${consumableId}')`,
    `INSERT INTO deliveries (id, practice_id, supplier_id, received_on, goods_total, landed_total,
       recorded_by)
     VALUES ('${delivery}', $1, '${supplier}', '2026-05-04', 0, 0, '${actor.personId}')`,
    `INSERT INTO layers (id, practice_id, delivery_id, line_number, lot_id, consumable_id,
       presentation_id, location_id, packs, pack_price, dispensing, content_per_container,
       received_on, lot_status, received, landed_cost)
     VALUES ('${layer}', $1, '${delivery}', 1, '${lot}', '${consumableId}', '${presentationId}',
       '${locationId}', 1, 0, 'multi-use', 10, '2026-05-04', 'released', 10, 0)`,
    `INSERT INTO holdings (id, practice_id, layer_id, location_id, on_hand)
     VALUES ('${layer}', $1, '${layer}', '${locationId}', 10)`,
  ];
  for (const statement of statements) await owner.query(statement, [actor.practiceId]);
  return { locationId: locationId ?? '' };
}
