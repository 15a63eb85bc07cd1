import { Injectable } from '@nestjs/common';
import { type Actor, decodeCursor, type Page, toPage, UnitOfWork } from '#lib/platform';
import { PersonEntity } from '../db/person.entity.js';
import { type PersonView, personView } from './views.js';

export interface ListedBy {
  readonly limit: number;
  readonly cursor?: string | undefined;
}

/** Everybody of the practice in the order of names, those who left included. */
@Injectable()
export class ListPeople {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, { limit, cursor }: ListedBy): Promise<Page<PersonView>> {
    return this.uow.read(actor.practiceId, async (tx) => {
      const people = tx.manager.createQueryBuilder(PersonEntity, 'person');
      if (cursor !== undefined) {
        const [name, id] = decodeCursor(cursor, 2);
        people.where('(lower(person.displayName), CAST(person.id AS text)) > (lower(:name), :id)', {
          name: String(name),
          id: String(id),
        });
      }
      const rows = await people
        .orderBy('lower(person.displayName)')
        .addOrderBy('CAST(person.id AS text)')
        .limit(limit + 1)
        .getMany();
      return toPage(rows, limit, personView, (row) => [row.displayName, row.id]);
    });
  }
}
