import { writeFile } from 'node:fs/promises';
import { parseArgs } from 'node:util';
import { type Environment, isIsoDate, Refused, StartupError } from '#lib/platform';
import type { ReplayedPractice } from '#lib/purchasing';
import { openDatabase } from './open-database.js';
import { Progress } from './progress.js';
import type { Shutdown } from './shutdown.js';
import { table } from './table.js';

interface ReplayArguments {
  readonly from: string | null;
  readonly csv: string | null;
}

export function replayArguments(args: readonly string[]): ReplayArguments {
  try {
    const options = { from: { type: 'string' }, csv: { type: 'string' } } as const;
    const { values } = parseArgs({ args: [...args], options });
    if (values.from !== undefined && !isIsoDate(values.from)) {
      throw new StartupError('--from must be a day that exists, written YYYY-MM-DD.');
    }
    return { from: values.from ?? null, csv: values.csv ?? null };
  } catch (error) {
    if (error instanceof StartupError) throw error;
    throw new StartupError(error instanceof Error ? error.message : String(error));
  }
}

/** What the computed ordering would have made of the history, beside the rules it had. */
export async function replay(
  env: Environment,
  shutdown: Shutdown,
  args: readonly string[],
): Promise<void> {
  const { from, csv } = replayArguments(args);
  const database = await openDatabase(env, shutdown);
  const { createApp } = await import('../../api/src/index.js');
  const { ReplayPractices } = await import('#lib/purchasing');
  const app = await createApp({ databaseUrl: database.url, logLevel: env.logLevel });
  shutdown.later(() => app.close());
  const progress = new Progress();
  const practices = await replayed(() =>
    app.get(ReplayPractices).run(from, (done, total, what) => {
      shutdown.throwIfAsked();
      progress.show(done, total, what);
    }),
  );
  progress.end();
  if (practices.length === 0) console.log('The book has no practice yet.');
  for (const practice of practices) console.log(told(practice));
  if (csv === null) return;
  await writeFile(csv, csvOf(practices));
  console.log(`\nEvery item is in ${csv}.`);
}

/** A refusal is something that the reader can mend. */
async function replayed<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    throw error instanceof Refused ? new StartupError(error.message) : error;
  }
}

function told({ name, firstDay, lastDay, result }: ReplayedPractice): string {
  if (result === null) return `\n${name}: too short a history, it takes twelve weeks of visits.`;
  const { computed, old, currency, items } = result;
  const rows = [
    ['', 'computed', 'as before'],
    ['item-days with something missing', computed.stockOutDays, old.stockOutDays],
    ['items that ran out', computed.itemsOut, old.itemsOut],
    [`expired, ${currency}`, computed.wastedValue, old.wastedValue],
    [`average stock, ${currency}`, computed.averageValue, old.averageValue],
    ['lines ordered', computed.orders, old.orders],
    ['orders sent', computed.sent, old.sent],
    [`freight, ${currency}`, computed.freight, old.freight],
  ];
  const { serviceLevel, serviceMeasure, reviewDays, reckonDays } = result.settings;
  return [
    `\n${name}: ${items.length} items, ${firstDay} to ${lastDay}`,
    table(rows.map((row) => row.map(String))),
    `  For a ${serviceMeasure} of ${serviceLevel}, ordered every ${reviewDays} days, forecast anew`,
    `  every ${reckonDays} days; settings, price lists and levels as typed in today; each day knows`,
    '  only the past. Computed orders keep to the smallest orders of suppliers; budgets play no part.',
  ].join('\n');
}

const COLUMNS = [
  ...['practice', 'consumable', 'shade', 'unit', 'old_rule', 'days_with_use'],
  ...['computed_days_missing', 'computed_unmet', 'computed_expired', 'computed_expired_value'],
  ...['computed_average_stock', 'computed_average_value', 'computed_orders'],
  ...['old_days_missing', 'old_unmet', 'old_expired', 'old_expired_value', 'old_average_stock'],
  ...['old_average_value', 'old_orders'],
];

/** One line per item (RFC 4180), decimals with a point. */
export function csvOf(practices: readonly ReplayedPractice[]): string {
  const rows = practices.flatMap(({ name, result }) =>
    (result?.items ?? []).map(({ consumable, oldRule, daysWithUse, computed, old }) => [
      ...[name, consumable.name, consumable.shade, consumable.unit, oldRule, daysWithUse],
      ...[computed, old].flatMap((side) => [
        ...[side.stockOutDays, side.unmet, side.wasted, side.wastedValue],
        ...[side.averageStock, side.averageValue, side.orders],
      ]),
    ]),
  );
  return [COLUMNS, ...rows].map((row) => `${row.map(cell).join(',')}\r\n`).join('');
}

/** A text that a spreadsheet would take for a formula is told apart by a quote before it. */
function cell(value: string | number | null): string {
  const text = value === null ? '' : String(value);
  const safe = typeof value === 'string' && /^[=+@\t\r-]/.test(text) && Number.isNaN(Number(text));
  const plain = safe ? `'${text}` : text;
  return /[",\r\n]/.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain;
}
