import pg from 'pg';
import { CreatePractice } from '#lib/access';
import { Clock, dayIn, UnitOfWork } from '#lib/platform';
import { createApp } from '../../apps/api/src/index.js';
import { BookReader, dayOfBook, PRACTICE_ID } from './book-reader.js';
import { BookSteps, personId } from './book-steps.js';
import { DayClock } from './day-clock.js';
import { PEOPLE, PRACTICE } from './practice.js';
import { buildScenario } from './scenario.js';
import { LAST_VISIT } from './simulate.js';
import type { Step, StepKind } from './steps.js';

export interface LoadDemoOptions {
  readonly databaseUrl: string;
  /** The day up to which the book is written: the practice's own today when left out. */
  readonly today?: string;
  onProgress(done: number, total: number, what: string): void;
}

export interface SignIn {
  readonly role: string;
  readonly signInName: string;
  readonly password: string;
}

export interface LoadedDemo {
  /** False: all of it was there already. */
  readonly loaded: boolean;
  readonly signIns: SignIn[];
}

/**
 * Writes the demo practice into an empty book through the use cases of the service. When it was
 * stopped halfway it goes on where it was; when all is there it says so and writes nothing.
 */
export async function loadDemo(options: LoadDemoOptions): Promise<LoadedDemo> {
  const signIns = PEOPLE.map(({ role, signInName, password }) => ({ role, signInName, password }));
  const state = await lookInto(options.databaseUrl);
  if (state === 'complete') return { loaded: false, signIns };
  const clock = options.today === undefined ? new Clock() : new DayClock(options.today);
  const app = await createApp({
    databaseUrl: options.databaseUrl,
    clock,
    logLevel: 'warn',
    poolSize: 3,
    relaxedCommit: true,
  });
  try {
    if (state === 'empty') await openBook(app.get(CreatePractice, { strict: false }));
    const reader = new BookReader(app.get(UnitOfWork, { strict: false }));
    const present = await reader.present();
    const day = dayOfBook(present) ?? dayIn(PRACTICE.timeZone, clock.now());
    const { steps } = buildScenario(day);
    await runAll(new BookSteps(app, day), steps, present, options);
    await gatherStatistics(options.databaseUrl);
  } finally {
    await app.close();
  }
  return { loaded: true, signIns };
}

/** Looks before anything is started: a book that is complete is known at once. */
async function lookInto(databaseUrl: string): Promise<'empty' | 'begun' | 'complete'> {
  const client = new pg.Client({ connectionString: databaseUrl });
  await client.connect();
  try {
    await client.query("SELECT set_config('traybook.practice_id', $1, false)", [PRACTICE_ID]);
    const { rows } = await client.query<{ empty: boolean; begun: boolean; complete: boolean }>(
      `SELECT book_is_empty() AS empty,
              EXISTS (SELECT FROM practices WHERE id = $1) AS begun,
              EXISTS (SELECT FROM visits WHERE id = $2) AS complete`,
      [PRACTICE_ID, LAST_VISIT],
    );
    const [book] = rows;
    if (book?.complete) return 'complete';
    if (book?.begun) return 'begun';
    if (book?.empty) return 'empty';
    throw new Error(
      'This book belongs to another practice. The demo is only written into an empty book.',
    );
  } finally {
    await client.end();
  }
}

async function openBook(createPractice: CreatePractice): Promise<void> {
  const [owner] = PEOPLE;
  if (!owner) throw new Error('The demo has no owner');
  await createPractice.run({
    practice: PRACTICE,
    owner,
    practiceId: PRACTICE_ID,
    ownerId: personId(owner.signInName),
  });
}

/**
 * The database plans its work by what it knows of its tables. By itself it looks again after a
 * minute or so; a book that is filled this fast would be read as if it were still empty.
 */
async function gatherStatistics(databaseUrl: string, roughly = false): Promise<void> {
  const client = new pg.Client({ connectionString: databaseUrl });
  await client.connect();
  try {
    if (roughly) await client.query('SET default_statistics_target = 10');
    await client.query('ANALYZE');
  } finally {
    await client.end();
  }
}

/** After so many steps the database looks again, roughly; in the end thoroughly. */
const LOOK_AGAIN = 600;

const WORDS: Partial<Record<StepKind, string>> = {
  person: 'people',
  supplier: 'suppliers',
  location: 'places',
  consumable: 'consumables',
  presentation: 'consumables',
  template: 'templates',
};

async function runAll(
  book: BookSteps,
  steps: readonly Step[],
  present: ReadonlySet<string>,
  { databaseUrl, onProgress }: LoadDemoOptions,
): Promise<void> {
  let done = 0;
  let nextStatistics = LOOK_AGAIN;
  // One by one: the same scenario makes the same book, lot by lot.
  for (const step of steps) {
    if (!present.has(book.nameOf(step) ?? '')) await book.run(step);
    done += 1;
    onProgress(done, steps.length, WORDS[step.kind] ?? step.date);
    if (done < nextStatistics) continue;
    await gatherStatistics(databaseUrl, true);
    nextStatistics += LOOK_AGAIN;
  }
}
