import { Injectable } from '@nestjs/common';
import { formatTooth, type IsoTooth } from '#lib/dentition';
import {
  type Actor,
  Clock,
  decodeCursor,
  type IsoDate,
  pageLimit,
  refuse,
  type Tx,
  toPage,
  UnitOfWork,
} from '#lib/platform';
import type {
  BookedRestorationDto,
  BookedVisitDto,
  BookedVisitPageDto,
  BookedVisitQuery,
} from '../http/booked-visits.dto.js';

type BookedRow = Omit<BookedVisitDto, 'restorations' | 'notRecordedYet' | 'bookedAt'> & {
  readonly restorations: (Omit<BookedRestorationDto, 'tooth'> & { tooth: IsoTooth | null })[];
  readonly bookedAt: Date;
};

const SHOWN = `
SELECT b.id, b.day::text, b.chart_reference AS "chartReference",
  CASE WHEN d.id IS NOT NULL THEN json_build_object('id', d.id, 'name', d.display_name) END AS dentist,
  CASE WHEN l.id IS NOT NULL THEN json_build_object('id', l.id, 'name', l.name) END AS location,
  b.external_reference AS "externalReference", b.alike, b.kept, b.state, b.version,
  (SELECT json_agg(json_build_object(
     'template', json_build_object('id', t.id, 'name', t.name), 'tooth', r.tooth,
     'surfaces', r.surfaces, 'cavityClass', r.cavity_class, 'size', r.size, 'reason', r.reason,
     'shades', (SELECT coalesce(json_agg(json_build_object('id', c.id, 'name', c.name,
                  'shade', c.shade) ORDER BY array_position(r.shades, c.id)), '[]')
                FROM consumables c WHERE c.id = ANY(r.shades))) ORDER BY r.position)
   FROM booked_restorations r JOIN procedure_templates t ON t.id = r.template_id
   WHERE r.booked_visit_id = b.id) AS restorations,
  (SELECT coalesce(json_agg(json_build_object('id', v.id, 'visitedOn', v.visited_on)
     ORDER BY v.visited_on, v.id), '[]')
   FROM visits v WHERE v.booked_visit_id = b.id AND v.reversed_at IS NULL) AS visits,
  CASE WHEN b.dropped_at IS NOT NULL THEN json_build_object('note', b.dropped_note,
    'by', x.display_name, 'at', to_json(b.dropped_at)) END AS dropped,
  p.display_name AS "bookedBy", b.booked_at AS "bookedAt"
FROM booked_visits b JOIN people p ON p.id = b.booked_by
LEFT JOIN people d ON d.id = b.dentist_id LEFT JOIN locations l ON l.id = b.location_id
LEFT JOIN people x ON x.id = b.dropped_by
WHERE b.practice_id = $1`;

const LIST = `${SHOWN}
  AND ($2::date IS NULL OR b.day >= $2) AND ($3::date IS NULL OR b.day <= $3)
  AND CASE $4::text WHEN 'booked' THEN b.state = 'booked' AND b.day >= $5::date
      WHEN 'not recorded yet' THEN b.state = 'booked' AND b.day < $5::date
      ELSE $4 IS NULL OR b.state = $4 END
  AND ($6::date IS NULL OR (b.day, b.id) > ($6::date, $7::uuid))
ORDER BY b.day, b.id LIMIT $8`;

/** Visits that are booked, the next day first. */
@Injectable()
export class BookedList {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  async run(actor: Actor, query: BookedVisitQuery): Promise<BookedVisitPageDto> {
    const limit = pageLimit(query);
    const [day, id] = query.cursor ? decodeCursor(query.cursor, 2) : [null, null];
    const today = this.clock.today(actor.timeZone);
    const rows = await this.uow.read(actor.practiceId, (tx) =>
      tx.query<BookedRow>(LIST, [
        ...[actor.practiceId, query.from ?? null, query.to ?? null, query.state ?? null, today],
        ...[day, id, limit + 1],
      ]),
    );
    const page = toPage(
      rows,
      limit,
      (row) => shown(row, actor, today),
      (row) => [row.day, row.id],
    );
    return { items: [...page.items], nextCursor: page.nextCursor };
  }

  async get(actor: Actor, id: string): Promise<BookedVisitDto> {
    return this.uow.read(actor.practiceId, (tx) => this.one(tx, actor, id));
  }

  /** One booking as it is inside a transaction. */
  async one(tx: Tx, actor: Actor, id: string): Promise<BookedVisitDto> {
    const [row] = await tx.query<BookedRow>(`${SHOWN} AND b.id = $2`, [tx.practiceId, id]);
    if (!row) throw noBooking();
    return shown(row, actor, this.clock.today(actor.timeZone));
  }
}

export function noBooking() {
  return refuse('not_found', 'There is no booked visit with this id.');
}

function shown(row: BookedRow, { toothNotation }: Actor, today: IsoDate): BookedVisitDto {
  return {
    ...row,
    notRecordedYet: row.state === 'booked' && row.day < today,
    restorations: row.restorations.map((each) => ({
      ...each,
      tooth: each.tooth === null ? null : formatTooth(each.tooth, toothNotation),
    })),
    bookedAt: row.bookedAt.toISOString(),
  };
}
