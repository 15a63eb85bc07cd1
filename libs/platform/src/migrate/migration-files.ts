import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { projectFolder } from '../config/project-folder.js';

/** One file of the migrations folder, e.g. 20261125100000-access-create-practices.sql. */
export interface MigrationFile {
  readonly file: string;
  /** As TypeORM knows it: the title and the file's time in milliseconds. */
  readonly name: string;
  readonly sql: string;
  readonly sha256: string;
}

function migrationsFolder(): string {
  return join(projectFolder(), 'migrations');
}

/** The migrations in the order of their names, which is the order of their times. */
export function readMigrations(folder = migrationsFolder()): MigrationFile[] {
  const files = readdirSync(folder).filter((file) => file.endsWith('.sql'));
  return files.sort().map((file) => {
    const sql = readFileSync(join(folder, file), 'utf8');
    return { file, name: typeOrmName(file), sql, sha256: sha256(sql) };
  });
}

// A checkout may turn line ends into CR LF; that alters nothing.
function sha256(sql: string): string {
  return createHash('sha256').update(sql.replaceAll('\r\n', '\n')).digest('hex');
}

function typeOrmName(file: string): string {
  const parts = /^(\d{4})(\d\d)(\d\d)(\d\d)(\d\d)(\d\d)-([a-z0-9-]+)\.sql$/.exec(file);
  if (!parts) throw new Error(`${file} is not named YYYYMMDDhhmmss-context-what-it-does.sql`);
  const [, year, month, day, hour, minute, second, title = ''] = parts;
  const time = Date.parse(`${year}-${month}-${day}T${hour}:${minute}:${second}Z`);
  if (Number.isNaN(time)) throw new Error(`${file} begins with a time that does not exist`);
  const words = title.split('-').map((word) => word.charAt(0).toUpperCase() + word.slice(1));
  return `${words.join('')}${time}`;
}
