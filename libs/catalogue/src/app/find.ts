import type { EntityTarget } from 'typeorm';
import { refuse, type Tx } from '#lib/platform';

interface Identified {
  id: string;
}

/** What a path names: its row, or 404. */
export async function findNamed<E extends Identified>(
  tx: Tx,
  entity: EntityTarget<E>,
  id: string,
  what: string,
): Promise<E> {
  const row = await tx.manager
    .createQueryBuilder(entity, 'row')
    .where('row.id = :id', { id })
    .getOne();
  if (!row) throw notFound(what);
  return row;
}

/** The same, held until the transaction ends, so that checks on the row stay true meanwhile. */
export async function findToChange<E extends Identified>(
  tx: Tx,
  entity: EntityTarget<E>,
  id: string,
  what: string,
): Promise<E> {
  const row = await tx.manager
    .createQueryBuilder(entity, 'row')
    .setLock('pessimistic_write')
    .where('row.id = :id', { id })
    .getOne();
  if (!row) throw notFound(what);
  return row;
}

function notFound(what: string) {
  return refuse('not_found', `There is no ${what} with this id.`, [
    { field: 'id', message: `names no ${what} of this practice` },
  ]);
}
