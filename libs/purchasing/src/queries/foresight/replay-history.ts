import { Injectable } from '@nestjs/common';
import { addDays, type IsoDate, invalidFields, type Tx, UnitOfWork } from '#lib/platform';
import { epochDay, isoDay } from '../../domain/forecast/calendar.js';
import { replayPeriod } from '../../domain/foresight/replay-period.js';
import { type ReplayProgress, replayShelf } from '../../domain/foresight/replay-shelf.js';
import type { ReplayResultDto } from '../../http/foresight/replays.dto.js';
import { refusePurchasing } from '../../purchasing.refusals.js';
import { Turns } from '../take-turns.js';
import { loadVisitDays } from '../usage-history.js';
import { loadPastFacts } from './past-facts.js';
import { replayResult } from './replay-view.js';

/** Both days are replayed. */
export interface ReplaySpan {
  readonly firstDay: IsoDate;
  readonly lastDay: IsoDate;
}

/** What to replay: from a day, or as far back as is usual, until yesterday. */
export async function replaySpan(
  tx: Tx,
  today: IsoDate,
  from: IsoDate | null,
): Promise<ReplaySpan> {
  const [first] = await loadVisitDays(tx, today);
  const period = replayPeriod(
    from === null ? null : epochDay(from),
    first === undefined ? null : epochDay(first),
    epochDay(today),
  );
  if (period.ok) return { firstDay: isoDay(period.firstDay), lastDay: addDays(today, -1) };
  if (period.reason === 'outside the history') {
    const message = `must be from ${isoDay(period.earliest)} to ${isoDay(period.latest)}`;
    throw invalidFields([{ field: 'from', message }]);
  }
  throw refusePurchasing(
    'history_too_short',
    'The first visit has to be twelve weeks ago: eight to learn from, four to replay.',
  );
}

/** Replays the history of a practice. Others get their turn every few milliseconds. */
@Injectable()
export class ReplayHistory {
  constructor(private readonly uow: UnitOfWork) {}

  /** `onProgress` is told often; what it throws ends the replay. */
  async run(
    practice: { readonly practiceId: string; readonly currency: string },
    { firstDay, lastDay }: ReplaySpan,
    onProgress: (progress: ReplayProgress) => Promise<void>,
  ): Promise<ReplayResultDto> {
    const { shelf, consumables } = await this.uow.read(practice.practiceId, (tx) =>
      loadPastFacts(tx, firstDay, addDays(lastDay, 1)),
    );
    const turns = new Turns();
    const steps = replayShelf(shelf);
    for (;;) {
      const step = steps.next();
      if (step.done === true) {
        const { settings } = shelf.rules;
        return replayResult(step.value, { currency: practice.currency, settings, consumables });
      }
      await turns.next();
      await onProgress(step.value);
    }
  }
}
