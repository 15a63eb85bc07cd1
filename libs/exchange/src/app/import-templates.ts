import { Injectable } from '@nestjs/common';
import { type FieldError, Refused } from '#lib/platform';
import { EnterTemplate } from '#lib/procedures';
import { loadConsumables } from '../db/load-master.js';
import { type Fate, failed, type RowFate } from '../domain/fate.js';
import { nameKey } from '../domain/plan/merge.js';
import { readTemplates, type TemplateGroup } from '../domain/plan/template-rows.js';
import { type CellProblem, problem } from '../domain/problems.js';
import type { ListRow } from '../domain/read-rows.js';
import type { Importing } from './importing.js';

/** Brings procedure templates in: new ones, and new versions of those that say something else. */
@Injectable()
export class ImportTemplates {
  constructor(private readonly enter: EnterTemplate) {}

  async run(importing: Importing, rows: readonly ListRow[]): Promise<RowFate[]> {
    const consumables = new Map(
      (await loadConsumables(importing.tx)).map(({ id, values }) => [
        nameKey(values.consumable, values.shade, values.size, values.grit),
        id,
      ]),
    );
    const fates = new Map<ListRow, RowFate>();
    for (const group of readTemplates(consumables, rows)) {
      for (const [row, fate] of await this.enterGroup(importing, group)) fates.set(row, fate);
      await importing.onProgress(fates.size);
    }
    return rows.map((row) => {
      const fate = fates.get(row);
      if (!fate) throw new Error(`Row ${row.number} got no fate`);
      return fate;
    });
  }

  private async enterGroup(
    { tx, actor }: Importing,
    group: TemplateGroup,
  ): Promise<[ListRow, RowFate][]> {
    const wrong = group.rows.some((row) => (group.problems.get(row) ?? []).length > 0);
    if (wrong) return group.rows.map((row) => [row, failedRow(group, row, [])]);
    try {
      const fate: Fate = await this.enter.run(tx, actor, group.template);
      const title = group.template.name;
      return group.rows.map((row) => [
        row,
        { row: row.number, fate, title, changes: [], problems: [] },
      ]);
    } catch (error) {
      if (!(error instanceof Refused) || error.fields.length === 0) throw error;
      const { fields } = error;
      return group.rows.map((row) => [row, failedRow(group, row, fields)]);
    }
  }
}

function failedRow(group: TemplateGroup, row: ListRow, fields: readonly FieldError[]): RowFate {
  const at = group.rows.indexOf(row);
  const own: CellProblem[] = [...(group.problems.get(row) ?? [])];
  for (const { field, message } of fields) {
    const match = /^lines\[(\d+)\]\.([a-zA-Z]+)/.exec(field);
    if (Number(match?.[1] ?? 0) !== at) continue;
    own.push(problem(match?.[2] ?? field, 'other', message));
  }
  const problems = own.length > 0 ? own : [problem(null, 'other-row-of-template')];
  return failed(row.number, group.template.name, problems);
}
