import { Injectable } from '@nestjs/common';
import { type Actor, Clock, newId, UnitOfWork } from '#lib/platform';
import { failSilentReplays, insertReplay } from '../../db/foresight/replays.js';
import type { NewReplayDto, ReplayDto } from '../../http/foresight/replays.dto.js';
import { refusePurchasing } from '../../purchasing.refusals.js';
import { oneReplay } from '../../queries/foresight/list-replays.js';
import { replaySpan } from '../../queries/foresight/replay-history.js';
import { RunReplay } from './run-replay.js';

/** Starts a replay of the history of the practice, one at a time. */
@Injectable()
export class StartReplay {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
    private readonly runReplay: RunReplay,
  ) {}

  async run(actor: Actor, key: string, command: NewReplayDto): Promise<ReplayDto> {
    const today = this.clock.today(actor.timeZone);
    const booking = { actor, key, operation: 'POST /api/reorder/replays', body: command };
    const { body, repeated } = await this.uow.runOnce<ReplayDto>(booking, async (tx) => {
      const now = this.clock.now();
      await failSilentReplays(tx, now);
      const span = await replaySpan(tx, today, command.from ?? null);
      const id = newId();
      const replay = { id, ...span, personId: actor.personId, startedAt: now };
      if (!(await insertReplay(tx, replay))) {
        throw refusePurchasing('replay_running', 'Wait for the replay that is running now.');
      }
      return oneReplay(tx, id);
    });
    if (!repeated) this.runReplay.begin(actor, body);
    return body;
  }
}
