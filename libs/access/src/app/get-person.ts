import { Injectable } from '@nestjs/common';
import { type Actor, refuse, type Tx, UnitOfWork } from '#lib/platform';
import { PersonEntity } from '../db/person.entity.js';
import { type PersonView, personView } from './views.js';

export async function findPerson(tx: Tx, id: string): Promise<PersonEntity> {
  const row = await tx.manager.findOneBy(PersonEntity, { id });
  if (!row) {
    throw refuse('not_found', 'There is no person with this id.', [
      { field: 'id', message: 'names no person of this practice' },
    ]);
  }
  return row;
}

@Injectable()
export class GetPerson {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, id: string): Promise<PersonView> {
    return this.uow.read(actor.practiceId, async (tx) => personView(await findPerson(tx, id)));
  }
}
