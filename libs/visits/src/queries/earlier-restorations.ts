import { Injectable } from '@nestjs/common';
import { formatTooth, type IsoTooth } from '#lib/dentition';
import { type Actor, UnitOfWork } from '#lib/platform';
import type { EarlierQuery, EarlierRestorationsDto } from '../http/earlier-restorations.dto.js';

// Enough for one chart: what is done again was done lately.
const EARLIER = `
SELECT r.id, v.id AS visit_id, v.visited_on::text, r.tooth, r.surfaces, r.reason,
       t.name AS template_name,
       EXISTS (SELECT FROM restorations o JOIN visits ov ON ov.id = o.visit_id
               WHERE o.redo_of = r.id AND ov.reversed_at IS NULL) AS redone
FROM visits v
JOIN restorations r ON r.visit_id = v.id
JOIN procedure_templates t ON t.id = r.template_id
WHERE v.practice_id = current_practice() AND lower(v.chart_reference) = lower($1)
  AND v.reversed_at IS NULL
ORDER BY v.visited_on DESC, v.id DESC, r.position LIMIT 100`;

interface Row {
  readonly id: string;
  readonly visit_id: string;
  readonly visited_on: string;
  readonly tooth: IsoTooth;
  readonly surfaces: string;
  readonly reason: string;
  readonly template_name: string;
  readonly redone: boolean;
}

/** What was restored for a chart before, the latest first: what a restoration may do again. */
@Injectable()
export class EarlierRestorations {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, query: EarlierQuery): Promise<EarlierRestorationsDto> {
    const notation = query.toothNotation ?? actor.toothNotation;
    const rows = await this.uow.read(actor.practiceId, (tx) =>
      tx.query<Row>(EARLIER, [query.chartReference.trim()]),
    );
    return {
      items: rows.map((row) => ({
        restorationId: row.id,
        visitId: row.visit_id,
        visitedOn: row.visited_on,
        tooth: formatTooth(row.tooth, notation),
        surfaces: row.surfaces,
        reason: row.reason,
        templateName: row.template_name,
        redone: row.redone,
      })),
    };
  }
}
