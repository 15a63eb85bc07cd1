import './work/driver-types.js';

export {
  type Environment,
  LOG_LEVELS,
  type LogLevel,
  readEnvironment,
} from './config/environment.js';
export { projectFolder } from './config/project-folder.js';
export { StartupError } from './config/startup-error.js';
export {
  CSV_SEPARATORS,
  type CsvCell,
  type CsvSeparator,
  csvLine,
  guarded,
  toCsv,
  unguarded,
} from './files/csv.js';
export { printable } from './files/printable.js';
export * from './http/fields.js';
export * from './http/idempotency.js';
export * from './http/outputs.js';
export * from './http/page-query.js';
export { createValidationPipe, IdPipe, invalidFields, unstorablePath } from './http/validation.js';
export { type Attachment, type Mail, Mailer, type MailOptions } from './mail/mailer.js';
export { type Migrated, migrateDatabase } from './migrate/migrate-database.js';
export { ProblemFilter, sendProblem } from './problems/problem.filter.js';
export { PROBLEM_MEDIA_TYPE, type Problem, problemType } from './problems/problem.js';
export {
  defineRefusals,
  type FieldError,
  Refused,
  refuse,
  unknownReference,
} from './problems/refused.js';
export { StartAgain } from './problems/start-again.js';
export { chooseDataDir, type DataDir } from './server/choose-data-dir.js';
export {
  type EmbeddedServer,
  type EmbeddedServerOptions,
  startEmbeddedServer,
} from './server/start-embedded-server.js';
export {
  addDays,
  addMonths,
  Clock,
  dayIn,
  daysBetween,
  type IsoDate,
  isIsoDate,
  isTimeZone,
} from './time/clock.js';
export {
  type Actor,
  COST_SHARE_KEYS,
  type CostShareKey,
  type PracticeSettings,
  ROLES,
  type Role,
} from './work/actor.js';
export { BackgroundWork } from './work/background.js';
export type { Booking, Claimed } from './work/booking.js';
export { currencyDigits, currencyStep } from './work/currency.js';
export { isId, newId } from './work/ids.js';
export { decodeCursor, encodeCursor, type Page, toPage } from './work/paging.js';
export { Tx } from './work/tx.js';
export { UnitOfWork } from './work/unit-of-work.js';
