import { Injectable } from '@nestjs/common';
import { type Actor, UnitOfWork } from '#lib/platform';
import { insertPerson, type NewPerson, preparePerson } from './add-person.js';
import { recordAudit } from './record-audit.js';
import { type PersonView, personView } from './views.js';

@Injectable()
export class CreatePerson {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, command: NewPerson, id?: string): Promise<PersonView> {
    const row = await preparePerson(command, actor.practiceId, id);
    return this.uow.run(actor.practiceId, async (tx) => {
      await insertPerson(tx, row);
      const view = personView(row);
      await recordAudit(tx, actor, {
        action: 'person.created',
        subjectKind: 'person',
        subjectId: row.id,
        details: { ...view },
      });
      return view;
    });
  }
}
