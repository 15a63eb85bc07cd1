import { type FieldError, invalidFields, newId, type Role, refuse, type Tx } from '#lib/platform';
import { refuseAccess } from '../access.refusals.js';
import { PersonEntity } from '../db/person.entity.js';
import {
  displayNameProblem,
  normalSignInName,
  passwordProblem,
  signInNameProblem,
} from '../domain/person-rules.js';
import { hashPassword } from './passwords.js';

export interface NewPerson {
  readonly displayName: string;
  readonly signInName: string;
  readonly password: string;
  readonly role: Role;
}

/** The row of a new person, checked, with the password already hashed (outside any transaction). */
export async function preparePerson(
  command: NewPerson,
  practiceId: string,
  id: string | undefined,
  path = '',
): Promise<PersonEntity & { passwordHash: string }> {
  const signInName = normalSignInName(command.signInName);
  const problems = {
    displayName: displayNameProblem(command.displayName),
    signInName: signInNameProblem(signInName),
    password: passwordProblem(command.password, signInName),
  };
  const errors: FieldError[] = Object.entries(problems).flatMap(([field, message]) =>
    message === undefined ? [] : [{ field: `${path}${field}`, message }],
  );
  if (errors.length > 0) throw invalidFields(errors);
  return {
    id: id ?? newId(),
    practiceId,
    displayName: command.displayName.trim(),
    signInName,
    passwordHash: await hashPassword(command.password),
    role: command.role,
    active: true,
  };
}

/** Stores a prepared person; refuses an id that is taken, or a sign-in name of anybody in the book. */
export async function insertPerson(
  tx: Tx,
  row: PersonEntity & { passwordHash: string },
  path = '',
): Promise<void> {
  const sameId = await tx.query('SELECT FROM people WHERE id = $1', [row.id]);
  if (sameId.length > 0) {
    throw refuse('already_exists', 'There is a person with this id already.', [
      { field: `${path}id`, message: 'is taken' },
    ]);
  }
  const inserted = await tx.query(
    `INSERT INTO people (id, practice_id, display_name, sign_in_name, password_hash, role, active)
     VALUES ($1, $2, $3, $4, $5, $6, $7) ON CONFLICT (sign_in_name) DO NOTHING RETURNING id`,
    [
      row.id,
      row.practiceId,
      row.displayName,
      row.signInName,
      row.passwordHash,
      row.role,
      row.active,
    ],
  );
  if (inserted.length === 1) return;
  throw refuseAccess('sign_in_name_taken', `Somebody already signs in as ${row.signInName}.`, [
    { field: `${path}signInName`, message: 'is taken; choose another' },
  ]);
}
