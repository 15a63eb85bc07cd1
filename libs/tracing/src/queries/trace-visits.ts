import { Injectable } from '@nestjs/common';
import {
  type Actor,
  decodeCursor,
  invalidFields,
  pageLimit,
  refuse,
  toPage,
  UnitOfWork,
} from '#lib/platform';
import type { ChartTraceDto, VisitTraceDto } from '../http/trace.dto.js';
import type { TraceQueryDto } from '../http/trace-queries.dto.js';
import { traceVisits, VISIT_COLUMNS, type VisitRow } from './visit-uses.js';

const FROM = `FROM visits v JOIN people p ON p.id = v.dentist_id`;

const ONE = `SELECT ${VISIT_COLUMNS} ${FROM} WHERE v.practice_id = $1 AND v.id = $2`;

const OF_CHART = `
SELECT ${VISIT_COLUMNS} ${FROM}
WHERE v.practice_id = $1 AND lower(v.chart_reference) = lower($2)
  AND ($3::date IS NULL OR (v.visited_on, v.id) > ($3::date, $4::uuid))
ORDER BY v.visited_on, v.id LIMIT $5`;

/** Backward: from a visit, or from a chart reference, to every lot that went into it. */
@Injectable()
export class TraceVisits {
  constructor(private readonly uow: UnitOfWork) {}

  async visit(actor: Actor, id: string): Promise<VisitTraceDto> {
    return this.uow.read(actor.practiceId, async (tx) => {
      const rows = await tx.query<VisitRow>(ONE, [actor.practiceId, id]);
      const [trace] = await traceVisits(tx, actor, rows, null);
      if (!trace) throw refuse('not_found', 'There is no visit with this id.');
      return trace;
    });
  }

  async chart(actor: Actor, reference: string, query: TraceQueryDto): Promise<ChartTraceDto> {
    const chartReference = reference.trim();
    if (chartReference === '' || chartReference.length > 60) {
      throw invalidFields([{ field: 'reference', message: 'must be 1 to 60 characters' }]);
    }
    const limit = pageLimit(query);
    const after = query.cursor === undefined ? [null, null] : decodeCursor(query.cursor, 2);
    return this.uow.read(actor.practiceId, async (tx) => {
      const values = [actor.practiceId, chartReference, ...after, limit + 1];
      const rows = await tx.query<VisitRow>(OF_CHART, values);
      if (rows.length === 0 && query.cursor === undefined) {
        throw refuse('not_found', 'There is no visit with this chart reference.');
      }
      const traces = await traceVisits(tx, actor, rows.slice(0, limit), null);
      const page = toPage(
        rows,
        limit,
        (row) => row,
        (row) => [row.visited_on, row.id],
      );
      return { chartReference, items: traces, nextCursor: page.nextCursor };
    });
  }
}
