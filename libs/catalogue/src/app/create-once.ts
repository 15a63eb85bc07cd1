import type { EntityTarget, ObjectLiteral } from 'typeorm';
import { recordAudit } from '#lib/access';
import { type Actor, refuse, type Tx } from '#lib/platform';
import { refusingTaken, type TakenNames } from '../db/taken.js';
import { changesBetween } from '../domain/changes.js';

interface Identified extends ObjectLiteral {
  id: string;
}

interface Creation<E extends Identified, V extends object> {
  readonly entity: EntityTarget<E>;
  readonly row: E;
  /** The id that the sender made, if it did. */
  readonly sentId: string | undefined;
  readonly kind: string;
  readonly names: TakenNames;
  readonly toView: (row: E) => V;
  /** What must hold besides the row itself; throws a refusal. */
  readonly check?: () => Promise<void>;
}

/**
 * Writes a new row and its audit entry. Sent again with the same id and the same data, it answers
 * the same and writes nothing; with other data it is refused.
 */
export async function createOnce<E extends Identified, V extends object>(
  tx: Tx,
  actor: Actor,
  creation: Creation<E, V>,
): Promise<V> {
  const { entity, row, sentId, kind, names, toView } = creation;
  const view = toView(row);
  const earlier = sentId ? await existing(tx, entity, sentId) : null;
  if (earlier) {
    if (changesBetween(toView(earlier), view)) throw otherwiseUsed(kind);
    return toView(earlier);
  }
  await creation.check?.();
  await refusingTaken(names, () =>
    tx.manager.createQueryBuilder().insert().into(entity).values(row).updateEntity(false).execute(),
  );
  await recordAudit(tx, actor, {
    action: `${kind}.created`,
    subjectKind: kind,
    subjectId: row.id,
    details: Object.fromEntries(Object.entries(view)),
  });
  return view;
}

/** The row with this id; a twin of this request that is still running is waited for. */
async function existing<E extends Identified>(
  tx: Tx,
  entity: EntityTarget<E>,
  id: string,
): Promise<E | null> {
  await tx.query('SELECT pg_advisory_xact_lock(hashtextextended($1, 0))', [`create ${id}`]);
  return tx.manager.createQueryBuilder(entity, 'row').where('row.id = :id', { id }).getOne();
}

function otherwiseUsed(kind: string) {
  return refuse('already_exists', `There is already another ${kind} with this id.`, [
    { field: 'id', message: 'is already in use' },
  ]);
}
