import { Injectable } from '@nestjs/common';
import { type Actor, UnitOfWork } from '#lib/platform';

export interface DentistView {
  readonly id: string;
  readonly displayName: string;
  readonly active: boolean;
}

/** Those by whom a visit can have been done: dentists, and owners, who may be dentists too. */
@Injectable()
export class ListDentists {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor): Promise<DentistView[]> {
    return this.uow.read(actor.practiceId, (tx) =>
      tx.query<DentistView>(
        `SELECT id, display_name AS "displayName", active FROM people
         WHERE role IN ('dentist', 'owner') ORDER BY lower(display_name), id`,
      ),
    );
  }
}
