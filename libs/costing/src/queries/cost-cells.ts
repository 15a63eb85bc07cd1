import type { Tx } from '#lib/platform';
import { CostGroups, type Kind } from '../domain/cost-groups.js';
import type { Group } from '../domain/group-by.js';
import { forEachCategory, forEachCell, type PackedSpan } from '../domain/packed-span.js';
import { spansOf } from '../domain/span-days.js';
import { readCosts, type Width } from '../domain/spread.js';
import type { Choice } from './chosen.js';

const KINDS = `
SELECT k.kind, k.template_id AS "templateId", t.name AS "templateName", k.reason,
       k.dentist_id AS "dentistId", p.display_name AS "dentistName"
FROM cost_kinds k JOIN procedure_templates t ON t.id = k.template_id
JOIN people p ON p.id = k.dentist_id
WHERE k.practice_id = $1 AND ($2::uuid IS NULL OR k.template_id = $2)
  AND ($3::text IS NULL OR k.reason = $3) AND ($4::uuid IS NULL OR k.dentist_id = $4)`;

const CATEGORIES = `
SELECT category_number AS number, category FROM cost_categories WHERE practice_id = $1`;

// A visit counts once in a row and once in the total, whatever else of it the report shows.
const VISITS = {
  none: 'visits',
  template: 'visits_of_template',
  reason: 'visits_of_reason',
  both: 'visits_of_both',
} as const;

// As array_send writes them: read as text, arrays of numbers take many times as long.
function spansSql(row: string, all: string): string {
  return `
SELECT s.first_day AS "firstDay", array_send(s.kinds) AS kinds, array_send(s.widths) AS widths,
       array_send(s.restorations) AS restorations, array_send(s.${row}) AS "rowVisits",
       array_send(s.${all}) AS "allVisits", array_send(s.own_costs) AS "ownCosts",
       array_send(s.shared_costs) AS "sharedCosts", array_send(s.retake_costs) AS "retakeCosts",
       s.costs, array_send(s.category_kinds) AS "categoryKinds",
       array_send(s.categories) AS categories, array_send(s.category_costs) AS "categoryCosts"
FROM unnest($2::text[], $3::date[], $4::date[]) AS e(span, first, last)
JOIN cost_spans s ON s.practice_id = $1 AND s.span = e.span
 AND s.first_day BETWEEN e.first AND e.last`;
}

/** What changed since, by what the report is grouped by: there may be tens of thousands of rows. */
function changesSql(row: string, all: string, groups: readonly Group[]): string {
  const of = (group: Group, column: string) => (groups.includes(group) ? column : 'NULL');
  const keys = [
    `${of('month', "to_char(day, 'YYYY-MM')")} AS month`,
    `${of('template', 'template_id')}::uuid AS "templateId"`,
    `${of('reason', 'reason')}::text AS reason`,
    `${of('dentist', 'dentist_id')}::uuid AS "dentistId"`,
  ];
  return `
SELECT c.*, t.name AS "templateName", p.display_name AS "dentistName" FROM (
  SELECT ${keys.join(', ')}, width, category, sum(restorations)::integer AS restorations,
         sum(${row})::integer AS "rowVisits", sum(${all})::integer AS "allVisits",
         sum(own_cost)::text AS own, sum(shared_cost)::text AS shared,
         sum(retake_cost)::text AS retake, sum(category_cost)::text AS cost,
         string_agg(costs, ''::bytea) AS costs, string_agg(removed, ''::bytea) AS removed
  FROM cost_changes
  WHERE practice_id = $1 AND ($2::uuid IS NULL OR template_id = $2)
    AND ($3::text IS NULL OR reason = $3) AND ($4::uuid IS NULL OR dentist_id = $4)
    AND ($5::date IS NULL OR day >= $5) AND ($6::date IS NULL OR day <= $6)
  GROUP BY 1, 2, 3, 4, 5, 6
) c
LEFT JOIN procedure_templates t ON t.id = c."templateId"
LEFT JOIN people p ON p.id = c."dentistId"`;
}

/** What the report is not grouped by is NULL. */
interface ChangeRow extends Kind {
  readonly month: string | null;
  readonly width: 0 | Width;
  readonly category: string | null;
  readonly restorations: number;
  readonly rowVisits: number;
  readonly allVisits: number;
  readonly own: string;
  readonly shared: string;
  readonly retake: string;
  readonly cost: string;
  readonly costs: Buffer;
  readonly removed: Buffer;
}

/** Adds up what the restorations of a choice cost: what is packed, and what changed since. */
export async function addUpCosts(
  tx: Tx,
  choice: Choice,
  groups: readonly Group[],
): Promise<CostGroups> {
  const filter = [choice.templateId ?? null, choice.reason ?? null, choice.dentistId ?? null];
  const [rowVisits, allVisits] = visitColumns(choice, groups);
  const sums = new CostGroups(groups);
  const kinds = await readKinds(tx, filter);
  const categories = await readCategories(tx);
  for (const span of await readSpans(tx, choice, groups, [rowVisits, allVisits])) {
    forEachCell(span, kinds, (cell) => sums.add(cell));
    forEachCategory(span, kinds, categories, (cost) => sums.addCategory(cost));
  }
  const days = [choice.from ?? null, choice.to ?? null];
  const changes = await tx.query<ChangeRow>(changesSql(rowVisits, allVisits, groups), [
    tx.practiceId,
    ...filter,
    ...days,
  ]);
  for (const change of changes) addChange(sums, change);
  return sums;
}

function visitColumns(choice: Choice, groups: readonly Group[]): [string, string] {
  const [template, reason] = [choice.templateId !== undefined, choice.reason !== undefined];
  const columnOf = (ofTemplate: boolean, ofReason: boolean) =>
    VISITS[ofTemplate ? (ofReason ? 'both' : 'template') : ofReason ? 'reason' : 'none'];
  const byTemplate = template || groups.includes('template');
  return [columnOf(byTemplate, reason || groups.includes('reason')), columnOf(template, reason)];
}

async function readKinds(tx: Tx, filter: unknown[]): Promise<Map<number, Kind>> {
  const rows = await tx.named<Kind & { kind: number }>('costing.kinds', KINDS, [
    tx.practiceId,
    ...filter,
  ]);
  return new Map(rows.map((row) => [row.kind, row]));
}

async function readCategories(tx: Tx): Promise<Map<number, string>> {
  const rows = await tx.named<{ number: number; category: string }>(
    'costing.categories',
    CATEGORIES,
    [tx.practiceId],
  );
  return new Map(rows.map(({ number, category }) => [number, category]));
}

function readSpans(
  tx: Tx,
  choice: Choice,
  groups: readonly Group[],
  visits: readonly [string, string],
): Promise<PackedSpan[]> {
  const period = { from: choice.from ?? null, to: choice.to ?? null };
  const ranges = spansOf({ ...period, byMonth: groups.includes('month') });
  return tx.query<PackedSpan>(spansSql(...visits), [
    tx.practiceId,
    ranges.map(({ span }) => span),
    ranges.map(({ first }) => first),
    ranges.map(({ last }) => last),
  ]);
}

function addChange(sums: CostGroups, change: ChangeRow): void {
  const { width, category, restorations, rowVisits, allVisits } = change;
  const month = change.month ?? '';
  if (width === 0) {
    sums.addCategory({ kind: change, month, category: category ?? '', cost: BigInt(change.cost) });
    return;
  }
  sums.add({
    kind: change,
    month,
    restorations,
    rowVisits,
    allVisits,
    own: BigInt(change.own),
    shared: BigInt(change.shared),
    retake: BigInt(change.retake),
    costs: readCosts(change.costs, width),
    removed: readCosts(change.removed, width),
  });
}
