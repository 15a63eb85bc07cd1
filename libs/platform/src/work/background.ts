import { type BeforeApplicationShutdown, Injectable, Logger } from '@nestjs/common';

/** Answers whether there is more to do at once. */
type Run = () => Promise<boolean>;

interface Job {
  readonly name: string;
  readonly everySeconds: number;
  readonly run: Run;
}

/** Between two turns of a job that has more to do: others get the database too. */
const PAUSE_SECONDS = 0.1;

/**
 * What the service does without being asked. Contexts add their jobs; only a listening service starts
 * them. A job never runs beside itself, a failure is logged and the next turn comes all the same, and a
 * stopping service waits for what is running.
 */
@Injectable()
export class BackgroundWork implements BeforeApplicationShutdown {
  private readonly log = new Logger('Background');
  private readonly jobs: Job[] = [];
  private readonly timers = new Set<NodeJS.Timeout>();
  private readonly running = new Set<Promise<void>>();
  private stopped = false;

  add(name: string, everySeconds: number, run: Run): void {
    this.jobs.push({ name, everySeconds, run });
  }

  start(): void {
    for (const job of this.jobs) this.later(job, job.everySeconds);
  }

  async beforeApplicationShutdown(): Promise<void> {
    this.stopped = true;
    for (const timer of this.timers) clearTimeout(timer);
    this.timers.clear();
    await Promise.all(this.running);
  }

  private later(job: Job, seconds: number): void {
    if (this.stopped) return;
    const timer = setTimeout(() => {
      this.timers.delete(timer);
      const turn = this.turn(job).then((more) => {
        this.running.delete(turn);
        this.later(job, more ? PAUSE_SECONDS : job.everySeconds);
      });
      this.running.add(turn);
    }, seconds * 1000);
    // Waiting for the next turn keeps no process alive.
    timer.unref();
    this.timers.add(timer);
  }

  private async turn({ name, run }: Job): Promise<boolean> {
    try {
      return await run();
    } catch (error) {
      this.log.error(`${name}: ${error instanceof Error ? (error.stack ?? error.message) : error}`);
      return false;
    }
  }
}
