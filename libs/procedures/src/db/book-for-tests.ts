import type { Client } from 'pg';
import { type Actor, newId, Refused, UnitOfWork } from '#lib/platform';
import { asOwner, createTestDatabase, testDataSource } from '../../../../test/harness/database.js';
import { ProcedureTemplateEntity } from './procedure-template.entity.js';
import { TemplateLineEntity } from './template-line.entity.js';
import { TemplateVersionEntity } from './template-version.entity.js';

/** A book with two practices and a few consumables of the first. */
export interface Book {
  readonly uow: UnitOfWork;
  /** Sees every row. */
  readonly owner: Client;
  readonly actor: Actor;
  /** Somebody of the other practice. */
  readonly stranger: Actor;
  close(): Promise<void>;
}

export const etch = newId();
export const wedge = newId();
export const body = newId();
export const enamel = newId();

export async function openBook(): Promise<Book> {
  const database = await createTestDatabase();
  const owner = await asOwner(database.url);
  const entities = [ProcedureTemplateEntity, TemplateLineEntity, TemplateVersionEntity];
  const dataSource = await testDataSource(database.url, entities);
  const actor = await newPractice(owner, 'Harbour Dental');
  await owner.query(
    `INSERT INTO consumables (id, practice_id, name, category, stock_unit, shade)
     SELECT id, $1, name, 'any', unit, shade
     FROM unnest($2::uuid[], $3::text[], $4::text[], $5::text[]) AS c (id, name, unit, shade)`,
    [
      actor.practiceId,
      [etch, wedge, body, enamel],
      ['Etching gel', 'Wedge', 'Paste', 'Paste'],
      ['mL', 'piece', 'g', 'g'],
      [null, null, 'Body 2', 'Enamel light'],
    ],
  );
  return {
    uow: new UnitOfWork(dataSource),
    owner,
    actor,
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
  const settings = { practiceId, practiceName, timeZone: 'Europe/Vienna', currency: 'EUR' };
  await owner.query(
    `INSERT INTO practices (id, name, time_zone, currency) VALUES ($1, $2, 'Europe/Vienna', 'EUR')`,
    [practiceId, practiceName],
  );
  await owner.query(
    `INSERT INTO people (id, practice_id, display_name, sign_in_name, password_hash, role)
     VALUES ($1, $2, 'Ada', $3, 'x', 'dentist')`,
    [personId, practiceId, personId],
  );
  const usual = { toothNotation: 'iso', costShareKey: 'equal', expiryWarningDays: 60 } as const;
  const person = { personId, displayName: 'Ada', signInName: personId, role: 'dentist' } as const;
  return { ...settings, ...usual, ...person };
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
export async function audited(owner: Client, subjectId: string): Promise<string[]> {
  const found = await owner.query<{ action: string }>(
    'SELECT action FROM audit_entries WHERE subject_id = $1 ORDER BY id',
    [subjectId],
  );
  return found.rows.map(({ action }) => action);
}
