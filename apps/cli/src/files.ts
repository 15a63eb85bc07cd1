import { randomUUID } from 'node:crypto';
import { readFile, writeFile } from 'node:fs/promises';
import { basename } from 'node:path';
import { parseArgs } from 'node:util';
import { IMPORT_KINDS, type ImportKind } from '#lib/exchange';
import { type Environment, Refused, StartupError } from '#lib/platform';
import { actAsOwner } from './act-as-owner.js';
import { openDatabase } from './open-database.js';
import type { Shutdown } from './shutdown.js';
import { table } from './table.js';

interface Arguments {
  readonly words: readonly string[];
  readonly as: string | undefined;
  readonly check: boolean;
}

function argumentsOf(args: readonly string[]): Arguments {
  const options = { as: { type: 'string' }, check: { type: 'boolean' } } as const;
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      options,
      allowPositionals: true,
    });
    return { words: positionals, as: values.as, check: values.check ?? false };
  } catch (error) {
    throw new StartupError(error instanceof Error ? error.message : String(error));
  }
}

/** Brings a file into the book, all of its rows or none; with --check only says what would become of it. */
export async function importFile(
  env: Environment,
  shutdown: Shutdown,
  args: readonly string[],
): Promise<void> {
  const { words, as, check } = argumentsOf(args);
  const [word, path] = words;
  const kind = IMPORT_KINDS.find((each) => each === word);
  if (!kind || path === undefined) {
    throw new StartupError(`Say: import <kind> <file>. Kinds: ${IMPORT_KINDS.join(', ')}.`);
  }
  const bytes = await read(path);
  const database = await openDatabase(env, shutdown);
  const actor = await actAsOwner(database.url, as);
  const { createApp } = await import('../../api/src/index.js');
  const { ImportFile } = await import('#lib/exchange');
  const app = await createApp({ databaseUrl: database.url, logLevel: env.logLevel });
  shutdown.later(() => app.close());
  const options = { kind, byHand: new Map<string, string | null>(), ignoreUnknown: false };
  const sent = { bytes, name: basename(path).slice(0, 200), options };
  const files = app.get(ImportFile);
  if (check) {
    const checked = await mendable(() => files.check(actor, sent, 20));
    const rows = checked.sheets.map((sheet) =>
      [sheet.sheet, sheet.newRows, sheet.changedRows, sheet.sameRows, sheet.errorRows].map(String),
    );
    console.log(table([['sheet', 'new', 'changed', 'same', 'errors'], ...rows]));
    for (const { problems, rows: fates } of checked.sheets) {
      const wrong = fates.flatMap((each) => each.problems.map((problem) => problem.sentence));
      for (const sentence of [...problems, ...wrong]) console.log(`  ${sentence}`);
    }
    return;
  }
  const { body } = await mendable(() => files.run(actor, randomUUID(), sent));
  const { newRows, changedRows, sameRows } = body;
  console.log(`Brought in: ${newRows} new, ${changedRows} changed, ${sameRows} the same.`);
}

/** Writes a list, or with book all of them, into a file that an import reads back. */
export async function exportFile(
  env: Environment,
  shutdown: Shutdown,
  args: readonly string[],
): Promise<void> {
  const { words, as } = argumentsOf(args);
  const [path, word = 'book'] = words;
  const kind = IMPORT_KINDS.find((each): each is ImportKind => each === word);
  const form = /\.(csv|xlsx)$/i.exec(path ?? '')?.[1]?.toLowerCase();
  const format = form === 'csv' || form === 'xlsx' ? form : undefined;
  if (path === undefined || !kind || !format || (kind === 'book' && format === 'csv')) {
    throw new StartupError(
      `Say: export <file.xlsx>, or export <file.csv> <kind>. Kinds: ${IMPORT_KINDS.join(', ')}.`,
    );
  }
  const database = await openDatabase(env, shutdown);
  const actor = await actAsOwner(database.url, as);
  const { createApp } = await import('../../api/src/index.js');
  const { ExportFiles } = await import('#lib/exchange');
  const app = await createApp({ databaseUrl: database.url, logLevel: env.logLevel });
  shutdown.later(() => app.close());
  const bytes = await app.get(ExportFiles).run(actor, { kind, format, language: 'en' });
  await writeFile(path, bytes);
  console.log(`The book is in ${path}.`);
}

async function read(path: string): Promise<Buffer> {
  try {
    return await readFile(path);
  } catch (error) {
    throw new StartupError(error instanceof Error ? error.message : String(error));
  }
}

/** A refusal is something that the reader can mend. */
async function mendable<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    throw error instanceof Refused ? new StartupError(error.message) : error;
  }
}
