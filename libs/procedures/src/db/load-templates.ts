import type { Reason } from '#lib/dentition';
import { quantity } from '#lib/measure';
import type { Tx } from '#lib/platform';
import type { TemplateOf } from '../domain/read-restoration.js';
import type { Driver, TemplateLine, TemplateVersion } from '../domain/template.js';

export interface TemplateRef {
  readonly templateId: string;
  /** The latest when left out. */
  readonly version?: number | null | undefined;
}

interface Row {
  readonly template_id: string;
  readonly name: string;
  readonly active: boolean;
  readonly version: number;
  readonly latest: boolean;
  readonly minutes: number;
  readonly assistant_minutes: number;
  readonly layer_thickness_mm: string;
  readonly lines: readonly LineRow[];
}

interface LineRow {
  readonly number: number;
  readonly consumable: string | null;
  readonly driver: Driver;
  readonly placed: string;
  readonly dispensed: string;
  readonly every: boolean;
  readonly reasons: readonly Reason[] | null;
  readonly shares_dose: boolean;
  readonly anaesthetic: boolean;
}

const LOAD = `
  SELECT t.id AS template_id, t.name, t.active, v.version, v.version = t.latest_version AS latest,
         v.minutes, v.assistant_minutes, v.layer_thickness_mm, l.lines
  FROM procedure_templates t
  JOIN template_versions v ON v.template_id = t.id
  CROSS JOIN LATERAL (
    SELECT coalesce(json_agg(json_build_object(
      'number', line_number, 'consumable', consumable_id, 'driver', driver,
      'placed', placed::text, 'dispensed', dispensed::text, 'every', every_attempt,
      'reasons', reasons, 'shares_dose', shares_dose, 'anaesthetic', anaesthetic)
      ORDER BY line_number), '[]') AS lines
    FROM template_lines WHERE template_id = v.template_id AND version = v.version
  ) l
  WHERE t.id = ANY($1::uuid[])
    AND (v.version = t.latest_version
         OR (v.template_id, v.version) IN (SELECT * FROM unnest($1::uuid[], $2::int[])))`;

/**
 * The named template versions, in one query whatever their number. The latest version of every
 * named template comes with them, so that a wrong version can be told from a wrong template.
 */
export async function loadTemplates(tx: Tx, refs: readonly TemplateRef[]): Promise<TemplateOf> {
  const found = new Map<string, TemplateVersion>();
  if (refs.length > 0) {
    const ids = refs.map((ref) => ref.templateId);
    const versions = refs.map((ref) => ref.version ?? 0);
    for (const row of await tx.named<Row>('procedures.load-templates', LOAD, [ids, versions])) {
      const version = toVersion(row);
      found.set(`${row.template_id} ${row.version}`, version);
      if (row.latest) found.set(row.template_id, version);
    }
  }
  return (templateId, version) =>
    found.get(version === undefined ? templateId : `${templateId} ${version}`);
}

function toVersion(row: Row): TemplateVersion {
  return {
    templateId: row.template_id,
    version: row.version,
    name: row.name,
    minutes: row.minutes,
    assistantMinutes: row.assistant_minutes,
    layerThicknessMm: quantity(row.layer_thickness_mm),
    active: row.active,
    lines: row.lines.map(toLine),
  };
}

function toLine(row: LineRow): TemplateLine {
  return {
    lineNumber: row.number,
    consumableId: row.consumable,
    driver: row.driver,
    placed: quantity(row.placed),
    dispensed: quantity(row.dispensed),
    everyAttempt: row.every,
    reasons: row.reasons,
    sharesDose: row.shares_dose,
    anaesthetic: row.anaesthetic,
  };
}
