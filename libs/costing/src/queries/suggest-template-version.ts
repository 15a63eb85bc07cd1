import { Injectable } from '@nestjs/common';
import { formatQuantity, quantity } from '#lib/measure';
import { type Actor, refuse, type Tx, UnitOfWork } from '#lib/platform';
import { loadTemplates, type TemplateLine, type TemplateVersion } from '#lib/procedures';
import { CONSUMABLE_COLUMNS, type ConsumableColumns, toConsumable } from '#lib/stock';
import { type LineSuggestion, meanOf, sentenceOf, suggestLine } from '../domain/suggest-version.js';
import type { SuggestionQueryDto } from '../http/costing-queries.dto.js';
import type { SuggestedLineDto, SuggestionDto } from '../http/suggestion.dto.js';

const LATEST = `
latest AS (
  SELECT r.id, r.visit_id, r.tooth, r.shades, r.minutes, r.assistant_minutes
  FROM restorations r JOIN visits v ON v.id = r.visit_id
  WHERE r.practice_id = $1 AND r.template_id = $2 AND r.template_version = $3
    AND v.reversed_at IS NULL
  ORDER BY v.visited_on DESC, r.id DESC LIMIT $4
)`;

// A line that two restorations share counts once: planned and used grow alike.
const USED = `
WITH ${LATEST}, lines AS (
  SELECT DISTINCT ON (u.id) u.*, u.consumable_id = ANY(l.shades) AS of_shade, l.id AS bearer
  FROM latest l
  JOIN usage_lines u ON u.visit_id = l.visit_id
   AND (u.restoration_id = l.id
        OR (u.restoration_id IS NULL AND (u.tooth IS NULL OR u.tooth = l.tooth)))
  ORDER BY u.id, l.id
), sums AS (
  SELECT consumable_id, driver, of_shade, count(*)::int AS uses,
         count(DISTINCT bearer)::int AS restorations, sum(planned)::text AS planned,
         sum(placed)::text AS placed, sum(dispensed)::text AS dispensed
  FROM lines GROUP BY 1, 2, 3
)
SELECT s.driver, s.of_shade, s.uses, s.restorations, s.planned, s.placed, s.dispensed,
       ${CONSUMABLE_COLUMNS}
FROM sums s JOIN consumables c ON c.id = s.consumable_id ORDER BY c.name, c.id`;

const COUNTED = `
WITH ${LATEST}
SELECT count(*)::int AS restorations, coalesce(round(avg(minutes)), 0)::int AS minutes,
       count(assistant_minutes)::int AS with_assistants,
       coalesce(round(avg(assistant_minutes)), 0)::int AS assistant_minutes
FROM latest`;

interface UsedRow extends ConsumableColumns {
  readonly driver: string | null;
  readonly of_shade: boolean;
  readonly uses: number;
  readonly restorations: number;
  readonly planned: string;
  readonly placed: string;
  readonly dispensed: string;
}

interface Counted {
  readonly restorations: number;
  readonly minutes: number;
  /** Restorations for which the time of assistants was stated, and their mean. */
  readonly with_assistants: number;
  readonly assistant_minutes: number;
}

const NOBODY: Counted = { restorations: 0, minutes: 0, with_assistants: 0, assistant_minutes: 0 };

const FEWEST = 5;

/** What the latest version of a template says beside what was used, and the next version. */
@Injectable()
export class SuggestTemplateVersion {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, templateId: string, query: SuggestionQueryDto): Promise<SuggestionDto> {
    const last = Number(query.last ?? 200);
    return this.uow.read(actor.practiceId, async (tx) => {
      const template = (await loadTemplates(tx, [{ templateId }]))(templateId);
      if (!template) throw refuse('not_found', 'There is no procedure template with this id.');
      const values = [actor.practiceId, templateId, template.version, last];
      const [counted] = await tx.query<Counted>(COUNTED, values);
      const used = await tx.query<UsedRow>(USED, values);
      const names = await namesOf(tx, template);
      return suggestion(template, last, counted ?? NOBODY, used, names);
    });
  }
}

type Names = ReadonlyMap<string, ConsumableColumns>;

async function namesOf(tx: Tx, template: TemplateVersion): Promise<Names> {
  const ids = template.lines.flatMap((line) => line.consumableId ?? []);
  const rows = await tx.query<ConsumableColumns>(
    `SELECT ${CONSUMABLE_COLUMNS} FROM consumables c WHERE c.id = ANY($1::uuid[])`,
    [ids],
  );
  return new Map(rows.map((row) => [row.consumable_id, row]));
}

function suggestion(
  template: TemplateVersion,
  last: number,
  counted: Counted,
  used: readonly UsedRow[],
  names: Names,
): SuggestionDto {
  const { templateId, name, version } = template;
  const lines = template.lines.map((line) => toLine(line, template, used, names, counted));
  const additions = used
    .filter((row) => row.driver === null)
    .map((row) => ({
      consumable: toConsumable(row),
      restorations: row.restorations,
      placed: formatQuantity(meanOf(quantity(row.placed), row.restorations, row.stock_unit)),
      dispensed: formatQuantity(meanOf(quantity(row.dispensed), row.restorations, row.stock_unit)),
      suggested: counted.restorations >= FEWEST && row.restorations * 2 >= counted.restorations,
    }));
  const found = { templateId, templateName: name, version, last, lines, additions };
  const time = {
    minutes: counted.restorations < FEWEST ? template.minutes : counted.minutes,
    assistantMinutes:
      counted.with_assistants < FEWEST ? template.assistantMinutes : counted.assistant_minutes,
  };
  const changed = lines.some((line) => line.changed) || additions.some((each) => each.suggested);
  const worth =
    changed ||
    isOff(time.minutes, template.minutes) ||
    isOff(time.assistantMinutes, template.assistantMinutes);
  return {
    ...found,
    restorations: counted.restorations,
    minutes: template.minutes,
    usedMinutes: counted.minutes,
    assistantMinutes: template.assistantMinutes,
    usedAssistantMinutes: counted.with_assistants === 0 ? null : counted.assistant_minutes,
    suggestedVersion: worth ? bodyOf(template, found, time, counted.restorations) : null,
  };
}

/** By 5 % or more. */
function isOff(minutes: number, planned: number): boolean {
  return Math.abs(minutes - planned) * 20 >= Math.max(1, planned);
}

function toLine(
  line: TemplateLine,
  template: TemplateVersion,
  used: readonly UsedRow[],
  names: Names,
  counted: Counted,
): SuggestedLineDto {
  const rows = rowsOf(line, template, used);
  const sum = (of: (row: UsedRow) => string) =>
    rows.reduce((total, row) => total + quantity(of(row)), 0n);
  const named = line.consumableId === null ? undefined : names.get(line.consumableId);
  const unit = named?.stock_unit ?? rows[0]?.stock_unit ?? null;
  const found = suggestLine({
    placed: line.placed,
    dispensed: line.dispensed,
    unit,
    uses: rows.reduce((total, row) => total + row.uses, 0),
    planned: sum((row) => row.planned) as typeof line.placed,
    usedPlaced: sum((row) => row.placed) as typeof line.placed,
    usedDispensed: sum((row) => row.dispensed) as typeof line.placed,
  });
  return {
    lineNumber: line.lineNumber,
    consumable: named ? toConsumable(named) : null,
    driver: line.driver,
    unit,
    ...amountsOf(line, found),
    sentence:
      found.used && unit !== null
        ? sentenceOf(line.dispensed, found.used.dispensed, unit, counted.restorations)
        : null,
  };
}

/** The usage lines that came from a template line. Lines that name the same are taken together. */
function rowsOf(
  line: TemplateLine,
  template: TemplateVersion,
  used: readonly UsedRow[],
): UsedRow[] {
  const ofDriver = used.filter((row) => row.driver === line.driver);
  if (line.consumableId !== null) {
    return ofDriver.filter((row) => row.consumable_id === line.consumableId);
  }
  const named = template.lines.flatMap((each) =>
    each.driver === line.driver && each.consumableId !== null ? [each.consumableId] : [],
  );
  return ofDriver.filter((row) => row.of_shade && !named.includes(row.consumable_id));
}

function amountsOf(line: TemplateLine, found: LineSuggestion) {
  return {
    placed: formatQuantity(line.placed),
    dispensed: formatQuantity(line.dispensed),
    usedPlaced: found.used ? formatQuantity(found.used.placed) : null,
    usedDispensed: found.used ? formatQuantity(found.used.dispensed) : null,
    suggestedPlaced: formatQuantity(found.placed),
    suggestedDispensed: formatQuantity(found.dispensed),
    changed: found.changed,
  };
}

function bodyOf(
  template: TemplateVersion,
  found: Pick<SuggestionDto, 'lines' | 'additions'>,
  time: { readonly minutes: number; readonly assistantMinutes: number },
  restorations: number,
): NonNullable<SuggestionDto['suggestedVersion']> {
  const added = found.additions.filter((each) => each.suggested);
  return {
    ...time,
    layerThicknessMm: formatQuantity(template.layerThicknessMm),
    note: `From what the last ${restorations} restorations used.`,
    lines: [
      ...template.lines.map((line, i) => ({
        consumableId: line.consumableId,
        driver: line.driver,
        placed: found.lines[i]?.suggestedPlaced ?? formatQuantity(line.placed),
        dispensed: found.lines[i]?.suggestedDispensed ?? formatQuantity(line.dispensed),
        everyAttempt: line.everyAttempt,
        reasons: line.reasons ? [...line.reasons] : null,
        sharesDose: line.sharesDose,
        anaesthetic: line.anaesthetic,
      })),
      ...added.map((each) => ({
        consumableId: each.consumable.id,
        driver: 'restoration' as const,
        placed: each.placed,
        dispensed: each.dispensed,
        everyAttempt: false,
        reasons: null,
        sharesDose: null,
        anaesthetic: null,
      })),
    ],
  };
}
