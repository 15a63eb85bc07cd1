import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { DataSource } from 'typeorm';
import {
  asOwner,
  createTestDatabase,
  type TestDatabase,
  testDataSource,
} from '../../../../test/harness/database.js';
import { Refused } from '../problems/refused.js';
import { StartAgain } from '../problems/start-again.js';
import type { Actor } from './actor.js';
import type { Booking } from './booking.js';
import { newId } from './ids.js';
import type { Tx } from './tx.js';
import { UnitOfWork } from './unit-of-work.js';

const OURS = newId();
const THEIRS = newId();

let database: TestDatabase;
let dataSource: DataSource;
let uow: UnitOfWork;

beforeAll(async () => {
  database = await createTestDatabase();
  const owner = await asOwner(database.url);
  await owner.query(
    `INSERT INTO practices (id, name, time_zone, currency)
     VALUES ($1, 'Ours', 'Europe/Vienna', 'EUR'), ($2, 'Theirs', 'Europe/Vienna', 'EUR')`,
    [OURS, THEIRS],
  );
  await owner.end();
  dataSource = await testDataSource(database.url);
  uow = new UnitOfWork(dataSource);
});

afterAll(async () => {
  await dataSource.destroy();
  await database.drop();
});

function addSupplier(tx: Tx, name: string, practiceId = OURS): Promise<object[]> {
  return tx.query('INSERT INTO suppliers (id, practice_id, name) VALUES ($1, $2, $3)', [
    newId(),
    practiceId,
    name,
  ]);
}

async function suppliers(practiceId: string, like: string): Promise<number> {
  const rows = await uow.read(practiceId, (tx) =>
    tx.query<{ n: number }>('SELECT count(*)::int AS n FROM suppliers WHERE name LIKE $1', [like]),
  );
  return rows[0]?.n ?? 0;
}

function booking(key: string, body: unknown): Booking {
  const actor: Actor = {
    practiceId: OURS,
    practiceName: 'Ours',
    timeZone: 'Europe/Vienna',
    currency: 'EUR',
    toothNotation: 'iso',
    costShareKey: 'equal',
    expiryWarningDays: 60,
    personId: newId(),
    displayName: 'Somebody',
    signInName: 'somebody',
    role: 'manager',
  };
  return { actor, key, operation: 'POST /api/suppliers', body };
}

describe('UnitOfWork', () => {
  it('keeps what was written, or nothing of it', async () => {
    await uow.run(OURS, (tx) => addSupplier(tx, 'Kept'));
    const failing = uow.run(OURS, async (tx) => {
      await addSupplier(tx, 'Lost');
      throw new Error('something else went wrong');
    });
    await expect(failing).rejects.toThrow('something else went wrong');
    expect(await suppliers(OURS, 'Kept')).toBe(1);
    expect(await suppliers(OURS, 'Lost')).toBe(0);
  });

  it('shows and takes rows of one practice only', async () => {
    await uow.run(THEIRS, (tx) => addSupplier(tx, 'Next door', THEIRS));
    expect(await suppliers(OURS, 'Next door')).toBe(0);
    expect(await suppliers(THEIRS, 'Next door')).toBe(1);
    const smuggled = uow.run(OURS, (tx) => addSupplier(tx, 'Smuggled', THEIRS));
    await expect(smuggled).rejects.toThrow('row-level security');
    await expect(uow.run("x'; DROP TABLE lots --", async () => 1)).rejects.toThrow('UUID');
  });

  it('forgets the practice at the end of the transaction', async () => {
    await uow.run(OURS, (tx) => addSupplier(tx, 'Remembered'));
    const rows: unknown = await dataSource.query('SELECT id FROM suppliers');
    expect(rows).toEqual([]);
  });

  it('cannot write while it reads', async () => {
    const writing = uow.read(OURS, (tx) => addSupplier(tx, 'Read'));
    await expect(writing).rejects.toThrow('read-only transaction');
  });

  it('does the work again after a deadlock', async () => {
    const names = ['Dead A', 'Dead B'];
    for (const name of names) await uow.run(OURS, (tx) => addSupplier(tx, name));
    let attempts = 0;
    const lockBoth = (order: string[]) =>
      uow.run(OURS, async (tx) => {
        attempts += 1;
        for (const name of order) {
          await tx.query('SELECT FROM suppliers WHERE name = $1 FOR UPDATE', [name]);
          await new Promise((resolve) => setTimeout(resolve, 100));
        }
      });
    await Promise.all([lockBoth(names), lockBoth([...names].reverse())]);
    expect(attempts).toBeGreaterThan(2);
  });

  it('does the work again when it says that what it read is no longer so; the first try leaves nothing', async () => {
    let attempts = 0;
    await uow.run(OURS, async (tx) => {
      attempts += 1;
      await addSupplier(tx, `Try ${attempts}`);
      if (attempts === 1) throw new StartAgain('the stock was changed meanwhile');
    });
    const rows = await uow.read(OURS, (tx) =>
      tx.query<{ name: string }>("SELECT name FROM suppliers WHERE name LIKE 'Try %'"),
    );
    expect(rows).toEqual([{ name: 'Try 2' }]);
  });

  it('gives up with a refusal when it is never let through', async () => {
    let attempts = 0;
    const hopeless = uow.run(OURS, async () => {
      attempts += 1;
      throw Object.assign(new Error('could not serialize'), { code: '40001' });
    });
    await expect(hopeless).rejects.toMatchObject({ code: 'busy' });
    expect(attempts).toBe(5);
  });
});

describe('runOnce', () => {
  it('books once and answers the same, however often it is sent', async () => {
    const key = newId();
    const send = () =>
      uow.runOnce(booking(key, { a: 1, b: 2 }), async (tx) => {
        await addSupplier(tx, `Once ${key}`);
        return { id: newId(), quantity: '0.060000' };
      });
    const answers = await Promise.all([send(), send(), send()]);
    answers.push(await send());
    expect(new Set(answers.map(({ body }) => JSON.stringify(body))).size).toBe(1);
    expect(answers.filter(({ repeated }) => !repeated)).toHaveLength(1);
    expect(await suppliers(OURS, `Once ${key}`)).toBe(1);
  });

  it('refuses the key for another body', async () => {
    const key = newId();
    await uow.runOnce(booking(key, { a: 1 }), async () => ({ ok: true }));
    const other = uow.runOnce(booking(key, { a: 2 }), async () => ({ ok: true }));
    await expect(other).rejects.toMatchObject({ code: 'idempotency_key_reused' });
  });

  it('leaves the key free when nothing was booked', async () => {
    const key = newId();
    const failing = uow.runOnce(booking(key, { a: 1 }), async () => {
      throw new Refused('no', { status: 409, title: 'No' }, 'Not now.');
    });
    await expect(failing).rejects.toThrow('Not now.');
    const again = await uow.runOnce(booking(key, { a: 2 }), async () => ({ ok: true }));
    expect(again).toEqual({ body: { ok: true }, repeated: false });
  });
});
