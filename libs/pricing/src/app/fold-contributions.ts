import { Injectable } from '@nestjs/common';
import { type Actor, UnitOfWork } from '#lib/platform';
import { changedMonths } from '../queries/contribution-cells.js';

/**
 * Works the months out again in which something changed since the last report, so that the next one
 * finds them ready. Reports are right without it, only slower.
 */
@Injectable()
export class FoldContributions {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor): Promise<void> {
    const changed = await this.uow.read(actor.practiceId, changedMonths);
    if (changed.length === 0) return;
    await this.uow.run(actor.practiceId, (tx) => tx.query('SELECT fold_contributions()'));
  }
}
