import { Injectable } from '@nestjs/common';
import { type Actor, invalidFields, type Role, type Tx, UnitOfWork } from '#lib/platform';
import { refuseAccess } from '../access.refusals.js';
import { PersonEntity } from '../db/person.entity.js';
import { losesLastOwner, passwordProblem } from '../domain/person-rules.js';
import { findPerson } from './get-person.js';
import { hashPassword } from './passwords.js';
import { recordAudit } from './record-audit.js';
import { type PersonView, personView } from './views.js';

export interface PersonChanges {
  readonly displayName?: string | null | undefined;
  readonly role?: Role | null | undefined;
  readonly active?: boolean | null | undefined;
  readonly password?: string | null | undefined;
}

/** Changes what a person is called, may do, or signs in with. */
@Injectable()
export class ChangePerson {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, id: string, command: PersonChanges): Promise<PersonView> {
    const password = command.password ?? undefined;
    const passwordHash = password === undefined ? undefined : await hashPassword(password);
    return this.uow.run(actor.practiceId, async (tx) => {
      const otherOwners = await lockOtherOwners(tx, id);
      const before = await findPerson(tx, id);
      if (password !== undefined) checkPassword(password, before.signInName);
      const after: PersonEntity = {
        ...before,
        displayName: command.displayName?.trim() ?? before.displayName,
        role: command.role ?? before.role,
        active: command.active ?? before.active,
      };
      refuseLastOwner(before, after, otherOwners);
      const { displayName, role, active } = after;
      await tx.manager.update(
        PersonEntity,
        { id },
        { displayName, role, active, ...(passwordHash === undefined ? {} : { passwordHash }) },
      );
      if (passwordHash !== undefined || !active) await endAccess(tx, id, !active);
      await recordAudit(tx, actor, {
        action: 'person.changed',
        subjectKind: 'person',
        subjectId: id,
        details: {
          before: personView(before),
          after: personView(after),
          passwordChanged: passwordHash !== undefined,
        },
      });
      return personView(after);
    });
  }
}

function checkPassword(password: string, signInName: string): void {
  const message = passwordProblem(password, signInName);
  if (message !== undefined) throw invalidFields([{ field: 'password', message }]);
}

/** Two owners who demote each other at once wait for one another here; the second is refused. */
async function lockOtherOwners(tx: Tx, id: string): Promise<number> {
  const owners = await tx.query<{ id: string }>(
    `SELECT id FROM people WHERE practice_id = $1 AND role = 'owner' AND active
     ORDER BY id FOR UPDATE`,
    [tx.practiceId],
  );
  return owners.filter((owner) => owner.id !== id).length;
}

function refuseLastOwner(before: PersonEntity, after: PersonEntity, otherActiveOwners: number) {
  const wasOwner = before.role === 'owner' && before.active;
  const staysOwner = after.role === 'owner' && after.active;
  if (!losesLastOwner({ wasOwner, staysOwner, otherActiveOwners })) return;
  const field = after.active ? 'role' : 'active';
  throw refuseAccess('last_owner', 'Make somebody else an owner first.', [
    { field, message: 'would leave the practice without an owner' },
  ]);
}

/** A new password ends the sessions; leaving also ends the personal tokens. */
async function endAccess(tx: Tx, id: string, tokensToo: boolean): Promise<void> {
  await tx.query('DELETE FROM sessions WHERE person_id = $1', [id]);
  if (!tokensToo) return;
  await tx.query(
    'UPDATE api_tokens SET revoked_at = now() WHERE person_id = $1 AND revoked_at IS NULL',
    [id],
  );
}
