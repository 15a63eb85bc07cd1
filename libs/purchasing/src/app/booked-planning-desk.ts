import { Injectable } from '@nestjs/common';
import { recordAudit } from '#lib/access';
import { type Actor, UnitOfWork } from '#lib/platform';
import {
  type BookedPlanning,
  loadBookedPlanning,
  saveBookedPlanning,
} from '../db/booked-planning.js';

/** Whether the whole day of the practice is booked here: then a day booked out needs no more. */
@Injectable()
export class BookedPlanningDesk {
  constructor(private readonly uow: UnitOfWork) {}

  async get(actor: Actor): Promise<BookedPlanning> {
    return this.uow.read(actor.practiceId, loadBookedPlanning);
  }

  async set(actor: Actor, { wholeDay, fullDays }: BookedPlanning): Promise<BookedPlanning> {
    return this.uow.run(actor.practiceId, async (tx) => {
      const before = await loadBookedPlanning(tx);
      const after = { wholeDay, fullDays };
      await saveBookedPlanning(tx, after);
      await recordAudit(tx, actor, {
        ...{ action: 'booked-planning.changed', subjectKind: 'practice' },
        ...{ subjectId: actor.practiceId, details: { before, after } },
      });
      return after;
    });
  }
}
