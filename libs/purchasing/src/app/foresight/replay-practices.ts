import { Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { Clock, type IsoDate, Refused, UnitOfWork } from '#lib/platform';
import type { ReplayResultDto } from '../../http/foresight/replays.dto.js';
import { ReplayHistory, replaySpan } from '../../queries/foresight/replay-history.js';

interface Practice {
  readonly practice_id: string;
  readonly practice_name: string;
  readonly time_zone: string;
  readonly currency: string;
}

export interface ReplayedPractice {
  readonly name: string;
  readonly firstDay: IsoDate | null;
  readonly lastDay: IsoDate | null;
  /** Null where the history is too short. */
  readonly result: ReplayResultDto | null;
}

/** Replays every practice of the book, for whoever administers it. Nothing is written. */
@Injectable()
export class ReplayPractices {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
    private readonly dataSource: DataSource,
    private readonly history: ReplayHistory,
  ) {}

  /** Refuses a day outside of the history of any practice. */
  async run(
    from: IsoDate | null,
    onProgress: (done: number, total: number, practice: string) => void,
  ): Promise<ReplayedPractice[]> {
    const practices: Practice[] = await this.dataSource.query('SELECT * FROM practices_to_watch()');
    const found: ReplayedPractice[] = [];
    for (const { practice_id: practiceId, practice_name: name, ...practice } of practices) {
      const today = this.clock.today(practice.time_zone);
      const span = await this.spanOf(practiceId, today, from);
      if (span === null) {
        found.push({ name, firstDay: null, lastDay: null, result: null });
        continue;
      }
      const about = { practiceId, currency: practice.currency };
      const result = await this.history.run(about, span, async ({ done, total }) =>
        onProgress(done, total, name),
      );
      found.push({ ...span, name, result });
    }
    return found;
  }

  private async spanOf(practiceId: string, today: IsoDate, from: IsoDate | null) {
    try {
      return await this.uow.read(practiceId, (tx) => replaySpan(tx, today, from));
    } catch (error) {
      if (error instanceof Refused && error.code === 'history_too_short') return null;
      throw error;
    }
  }
}
