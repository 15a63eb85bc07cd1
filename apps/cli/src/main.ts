import { type Environment, readEnvironment, StartupError } from '#lib/platform';
import { demo } from './demo.js';
import { exportFile, importFile } from './files.js';
import { openDatabase } from './open-database.js';
import { replay } from './replay.js';
import { Shutdown, Stopped } from './shutdown.js';
import { start } from './start.js';

const USAGE = `Usage: main.js <command>

  start    run the service
  demo     fill an empty book with an invented practice, then run the service
  migrate  bring the database schema up to date and end
  replay   what computed ordering would have made of the history, beside the rules it had
           [--from YYYY-MM-DD]  a year ago, or as far back as the book goes, if left out
           [--csv FILE]         writes every item into a file as well
  import   bring a list in from a file, all of its rows or none: import <kind> <file>
           [--check]            only says what would become of it
           [--as SIGN-IN-NAME]  the owner on whose behalf, where there are several practices
  export   write the whole book into a workbook: export <file.xlsx>
           or one list: export <file.csv> <kind>; [--as SIGN-IN-NAME]

Environment: DATABASE_URL, HOST, PORT, TRAYBOOK_DATA, TRAYBOOK_LOG (error, warn, info).`;

type Command = (env: Environment, shutdown: Shutdown, args: readonly string[]) => Promise<void>;

async function migrate(env: Environment, shutdown: Shutdown): Promise<void> {
  await openDatabase(env, shutdown);
  console.log('The schema is up to date.');
}

const COMMANDS: Readonly<Record<string, Command>> = {
  start: (env, shutdown) => start(env, shutdown),
  demo,
  migrate,
  replay,
  import: importFile,
  export: exportFile,
};

async function attempt(work: () => Promise<void>): Promise<number> {
  try {
    await work();
    return 0;
  } catch (error) {
    if (error instanceof Stopped) return 0;
    const unexpected = error instanceof Error ? (error.stack ?? error.message) : String(error);
    console.error(error instanceof StartupError ? error.message : unexpected);
    return 1;
  }
}

async function main(name: string | undefined): Promise<number> {
  const command = COMMANDS[name ?? ''];
  if (!command) {
    const asked = name === '--help' || name === 'help';
    (asked ? console.log : console.error)(USAGE);
    return asked ? 0 : 2;
  }
  const shutdown = new Shutdown();
  shutdown.listen();
  const code = await attempt(() => command(readEnvironment(), shutdown, process.argv.slice(3)));
  const ending = await attempt(() => shutdown.run());
  return Math.max(code, ending);
}

process.exit(await main(process.argv[2]));
