import { Injectable } from '@nestjs/common';
import { type Actor, Clock, UnitOfWork } from '#lib/platform';
import type { PlanVisitDto } from '../http/visit-inputs.dto.js';
import type { VisitPreviewDto } from '../http/visit-outputs.dto.js';
import { planVisit } from './plan-visit.js';
import { refuseFuture } from './post-visit.js';
import { viewOf } from './visit-view.js';

/** What a visit would take and cost if it were posted now. Writes and locks nothing. */
@Injectable()
export class PreviewVisit {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  async run(actor: Actor, body: PlanVisitDto): Promise<VisitPreviewDto> {
    refuseFuture(body.visitedOn, this.clock.today(actor.timeZone));
    return this.uow.read(actor.practiceId, async (tx) => {
      const planned = await planVisit(tx, actor, body, { dentistId: null, lock: false });
      return viewOf(planned, actor, body.visitedOn);
    });
  }
}
