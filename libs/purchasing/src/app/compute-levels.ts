import { Injectable, Logger, type OnModuleInit } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { BackgroundWork, Clock, UnitOfWork } from '#lib/platform';
import { levelsAreDue } from '../db/computed-levels.js';
import { DecideShelf } from '../queries/decide-shelf.js';

const EVERY_SECONDS = 60;
/** The least between two readings of a practice in which much is booked. */
const REST_SECONDS = 300;

interface Practice {
  readonly practice_id: string;
  readonly time_zone: string;
  readonly currency: string;
}

/**
 * Computes the levels of every practice anew when the day or the book has changed, for the alerts to go
 * by. Nobody waits for it; until it has run, alerts go by the levels of the reading before.
 */
@Injectable()
export class ComputeLevels implements OnModuleInit {
  private readonly log = new Logger('Levels');

  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
    private readonly dataSource: DataSource,
    private readonly decideShelf: DecideShelf,
    private readonly background: BackgroundWork,
  ) {}

  onModuleInit(): void {
    this.background.add('Levels', EVERY_SECONDS, async () => {
      await this.run();
      return false;
    });
  }

  /** Answers with the practices whose levels were computed; one that fails holds up no other. */
  async run(): Promise<string[]> {
    const practices: Practice[] = await this.dataSource.query('SELECT * FROM practices_to_watch()');
    const done: string[] = [];
    for (const practice of practices) {
      const { practice_id: practiceId, time_zone: timeZone, currency } = practice;
      const today = this.clock.today(timeZone);
      const due = await this.uow.read(practiceId, (tx) => levelsAreDue(tx, today, REST_SECONDS));
      if (!due) continue;
      try {
        await this.decideShelf.run({ practiceId, timeZone, currency });
        done.push(practiceId);
      } catch (error) {
        const said = error instanceof Error ? (error.stack ?? error.message) : String(error);
        this.log.error(`Levels of practice ${practiceId}: ${said}`);
      }
    }
    return done;
  }
}
