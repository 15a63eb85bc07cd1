import { Injectable } from '@nestjs/common';
import { formatTooth, type IsoTooth } from '#lib/dentition';
import { formatMoney, money } from '#lib/measure';
import { type Actor, decodeCursor, pageLimit, toPage, UnitOfWork } from '#lib/platform';
import type { VisitListQuery } from '../http/visit-list.query.js';
import type { VisitPageDto, VisitSummaryDto } from '../http/visit-page.dto.js';

interface Row {
  id: string;
  visited_on: string;
  chart_reference: string;
  dentist: { id: string; name: string };
  location: { id: string; name: string };
  restorations: { tooth: IsoTooth; surfaces: string; reason: string }[];
  material_cost: string;
  estimated: boolean;
  reversed: boolean;
}

const LIST = `
SELECT v.id, v.visited_on::text, v.chart_reference,
  json_build_object('id', d.id, 'name', d.display_name) AS dentist,
  json_build_object('id', l.id, 'name', l.name) AS location,
  (SELECT json_agg(json_build_object('tooth', r.tooth, 'surfaces', r.surfaces, 'reason', r.reason)
     ORDER BY r.position) FROM restorations r WHERE r.visit_id = v.id) AS restorations,
  v.material_cost, v.estimated, v.reversed_at IS NOT NULL AS reversed
FROM visits v JOIN people d ON d.id = v.dentist_id JOIN locations l ON l.id = v.location_id
WHERE v.practice_id = current_practice()
  AND ($1::text IS NULL OR lower(v.chart_reference) = lower($1))
  AND ($2::uuid IS NULL OR v.dentist_id = $2)
  AND ($3::uuid IS NULL OR v.location_id = $3)
  AND ($4::date IS NULL OR v.visited_on >= $4)
  AND ($5::date IS NULL OR v.visited_on <= $5)
  AND ($6::boolean IS NULL OR v.estimated = $6)
  AND ($7::date IS NULL OR (v.visited_on, v.id) < ($7::date, $8::uuid))
ORDER BY v.visited_on DESC, v.id DESC
LIMIT $9`;

/** Visits, the latest first. */
@Injectable()
export class VisitList {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, query: VisitListQuery): Promise<VisitPageDto> {
    const limit = pageLimit(query);
    const [day, id] = query.cursor ? readCursor(query.cursor) : [null, null];
    const rows = await this.uow.read(actor.practiceId, (tx) =>
      tx.query<Row>(LIST, [
        query.chartReference?.trim() ?? null,
        query.dentistId ?? null,
        query.locationId ?? null,
        query.from ?? null,
        query.to ?? null,
        query.estimated === undefined ? null : query.estimated === 'true',
        day,
        id,
        limit + 1,
      ]),
    );
    const page = toPage(
      rows,
      limit,
      (row) => summaryOf(row, actor.toothNotation),
      (row) => [row.visited_on, row.id],
    );
    return { items: [...page.items], nextCursor: page.nextCursor };
  }
}

function readCursor(cursor: string): (string | number | null)[] {
  return decodeCursor(cursor, 2);
}

function summaryOf(row: Row, notation: 'iso' | 'universal'): VisitSummaryDto {
  const { visited_on, chart_reference, material_cost, restorations, ...rest } = row;
  return {
    ...rest,
    visitedOn: visited_on,
    chartReference: chart_reference,
    restorations: restorations
      .map((r) => `${formatTooth(r.tooth, notation)} ${r.surfaces} ${r.reason}`)
      .join(', '),
    restorationCount: restorations.length,
    materialCost: formatMoney(money(material_cost)),
  };
}
