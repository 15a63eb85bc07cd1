import { REASONS, type Reason } from '#lib/dentition';
import type { Driver } from '#lib/procedures';
import { type CellProblem, problem } from '../problems.js';
import type { ListRow } from '../read-rows.js';
import { goodsKey, goodsTitle } from './goods.js';
import { nameKey } from './merge.js';

/** A template as rows of a list say it, with what is wrong in each of them. */
export interface TemplateGroup {
  readonly rows: readonly ListRow[];
  readonly problems: ReadonlyMap<ListRow, readonly CellProblem[]>;
  readonly template: {
    readonly name: string;
    readonly active: boolean | null;
    readonly minutes: number | null;
    readonly assistantMinutes: number | null;
    readonly layerThicknessMm: string | null;
    readonly note: string | null;
    readonly lines: readonly TemplateLineRow[];
  };
}

export interface TemplateLineRow {
  readonly consumableId: string | null;
  readonly driver: Driver;
  readonly placed: string;
  readonly dispensed: string;
  readonly everyAttempt: boolean | null;
  readonly reasons: readonly Reason[] | null;
  readonly sharesDose: boolean | null;
  readonly anaesthetic: boolean | null;
}

const OF_THE_TEMPLATE = [
  ...['minutes', 'assistantMinutes', 'layerThickness', 'versionNote', 'active'],
] as const;

const MOST_LINES = 100;

/** Puts the rows of a list together to templates. Consumables are known by the key of their names. */
export function readTemplates(
  consumables: ReadonlyMap<string, string>,
  rows: readonly ListRow[],
): TemplateGroup[] {
  const grouped = new Map<string, ListRow[]>();
  for (const row of rows) {
    const key = nameKey(row.values.get('template'));
    const group = grouped.get(key);
    if (group) group.push(row);
    else grouped.set(key, [row]);
  }
  return [...grouped.values()].map((group) => groupOf(consumables, group));
}

function groupOf(
  consumables: ReadonlyMap<string, string>,
  rows: readonly ListRow[],
): TemplateGroup {
  const problems = new Map<ListRow, CellProblem[]>(rows.map((row) => [row, [...row.problems]]));
  const head = new Map<string, string>();
  const saidBy = new Map<string, number>();
  const lines = rows.map((row, at) => {
    const wrong = problems.get(row) ?? [];
    if (at === 0 && !row.values.has('template')) {
      wrong.push(problem('template', 'template-blank'));
    }
    if (at === MOST_LINES) wrong.push(problem(null, 'too-many-lines', at + 1, MOST_LINES));
    for (const column of OF_THE_TEMPLATE) {
      const said = row.values.get(column);
      const earlier = head.get(column);
      if (said === undefined || said === earlier) continue;
      if (earlier === undefined) {
        head.set(column, said);
        saidBy.set(column, row.number);
      } else {
        const row = saidBy.get(column) ?? 0;
        wrong.push(problem(column, 'contradicts-in-template', row, earlier));
      }
    }
    return lineOf(consumables, row, wrong);
  });
  const whole = (column: string) => (head.has(column) ? Number(head.get(column)) : null);
  return {
    rows,
    problems,
    template: {
      name: rows[0]?.values.get('template') ?? '',
      active: flag(head.get('active')),
      minutes: whole('minutes'),
      assistantMinutes: whole('assistantMinutes'),
      layerThicknessMm: head.get('layerThickness') ?? null,
      note: head.get('versionNote') ?? null,
      lines,
    },
  };
}

function lineOf(
  consumables: ReadonlyMap<string, string>,
  { values }: ListRow,
  wrong: CellProblem[],
): TemplateLineRow {
  const title = goodsTitle(values);
  const consumableId = title === '' ? null : (consumables.get(goodsKey(values)) ?? null);
  if (title !== '' && consumableId === null) {
    wrong.push(problem('consumable', 'no-consumable', title));
  }
  const failed = new Set(wrong.map((each) => each.column));
  for (const column of ['driver', 'dispensed']) {
    if (!values.has(column) && !failed.has(column)) wrong.push(problem(column, 'blank'));
  }
  return {
    consumableId,
    driver: (values.get('driver') ?? 'visit') as Driver,
    placed: values.get('placed') ?? '0',
    dispensed: values.get('dispensed') ?? '0',
    everyAttempt: flag(values.get('everyAttempt')),
    reasons: readReasons(values.get('reasons'), wrong),
    sharesDose: flag(values.get('sharesDose')),
    anaesthetic: flag(values.get('anaesthetic')),
  };
}

function flag(said: string | undefined): boolean | null {
  return said === undefined ? null : said === 'yes';
}

function readReasons(said: string | undefined, wrong: CellProblem[]): Reason[] | null {
  if (said === undefined) return null;
  const words = new Set(said.split(/[;,]/).map((word) => word.trim().toLowerCase()));
  const known = REASONS.filter((reason) => words.delete(reason));
  words.delete('');
  const [other] = words;
  if (other !== undefined) {
    wrong.push(problem('reasons', 'not-all-choices', other, REASONS.join(', ')));
  }
  return known.length > 0 ? known : null;
}
