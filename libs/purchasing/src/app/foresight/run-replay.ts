import { type BeforeApplicationShutdown, Injectable, Logger } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { type Actor, Clock, UnitOfWork } from '#lib/platform';
import {
  failReplay,
  failSilentReplays,
  finishReplay,
  noteProgress,
  type ReplayFailure,
} from '../../db/foresight/replays.js';
import { ReplayHistory, type ReplaySpan } from '../../queries/foresight/replay-history.js';

export interface ReplayJob extends ReplaySpan {
  readonly id: string;
}

/** So often a replay says how far it is. */
const PROGRESS_MS = 1000;

/** Thrown inside a replay that nobody waits for any more. */
class GivenUp extends Error {}

/**
 * Reckons replays in the background of this process. A result is written whole or not at all: a
 * stopping service gives its replays up, and those of a killed one are found by their silence.
 */
@Injectable()
export class RunReplay implements BeforeApplicationShutdown {
  private readonly log = new Logger('Replay');
  private readonly running = new Set<Promise<void>>();
  private stopping = false;

  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
    private readonly dataSource: DataSource,
    private readonly history: ReplayHistory,
  ) {}

  /** Begins, and does not wait for the end. */
  begin(actor: Actor, job: ReplayJob): void {
    const work = this.work(actor, job).finally(() => this.running.delete(work));
    this.running.add(work);
  }

  async beforeApplicationShutdown(): Promise<void> {
    this.stopping = true;
    await Promise.all(this.running);
  }

  /** Marks what a killed process left behind, in every practice. */
  async giveUpSilent(): Promise<void> {
    const practices: { practice_id: string }[] = await this.dataSource.query(
      'SELECT practice_id FROM practices_to_watch()',
    );
    for (const { practice_id: id } of practices) {
      await this.uow.run(id, (tx) => failSilentReplays(tx, this.clock.now()));
    }
  }

  private async work(actor: Actor, job: ReplayJob): Promise<void> {
    try {
      await this.reckon(actor, job);
    } catch (error) {
      const stopped = error instanceof GivenUp;
      if (!stopped) this.say(error);
      await this.fail(actor, job, stopped ? 'stopped' : 'error');
    }
  }

  private async reckon(actor: Actor, job: ReplayJob): Promise<void> {
    const { practiceId } = actor;
    let told = 0;
    const result = await this.history.run(actor, job, async (progress) => {
      if (this.stopping) throw new GivenUp();
      if (performance.now() - told < PROGRESS_MS) return;
      told = performance.now();
      const goesOn = await this.uow.run(practiceId, (tx) => noteProgress(tx, job.id, progress));
      if (!goesOn) throw new GivenUp();
    });
    await this.uow.run(practiceId, (tx) => finishReplay(tx, job.id, result, this.clock.now()));
  }

  private async fail({ practiceId }: Actor, job: ReplayJob, failure: ReplayFailure) {
    try {
      await this.uow.run(practiceId, (tx) => failReplay(tx, job.id, failure, this.clock.now()));
    } catch (error) {
      // Its silence will say the same a little later.
      this.say(error);
    }
  }

  private say(error: unknown): void {
    this.log.error(error instanceof Error ? (error.stack ?? error.message) : String(error));
  }
}
