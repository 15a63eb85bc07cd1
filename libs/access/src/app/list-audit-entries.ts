import { Injectable } from '@nestjs/common';
import { type Actor, decodeCursor, type Page, toPage, UnitOfWork } from '#lib/platform';

export interface AuditFilter {
  readonly limit: number;
  readonly cursor?: string | undefined;
  readonly subjectKind?: string | undefined;
  readonly subjectId?: string | undefined;
  readonly personId?: string | undefined;
}

export interface AuditEntryView {
  readonly id: string;
  readonly recordedAt: string;
  readonly personId: string | null;
  readonly personName: string | null;
  readonly action: string;
  readonly subjectKind: string;
  readonly subjectId: string;
  readonly details: Readonly<Record<string, unknown>>;
}

/** The audit trail, latest first. */
@Injectable()
export class ListAuditEntries {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, filter: AuditFilter): Promise<Page<AuditEntryView>> {
    const [time = null, id = null] =
      filter.cursor === undefined ? [] : decodeCursor(filter.cursor, 2);
    const rows = await this.uow.read(actor.practiceId, (tx) =>
      tx.named<AuditEntryView>('access_audit_entries', SQL, [
        filter.subjectKind ?? null,
        filter.subjectId ?? null,
        filter.personId ?? null,
        time,
        id,
        filter.limit + 1,
      ]),
    );
    return toPage(
      rows,
      filter.limit,
      (row) => row,
      (row) => [row.recordedAt, row.id],
    );
  }
}

const SQL = `
  SELECT a.id, a.person_id AS "personId", p.display_name AS "personName", a.action,
         to_char(a.recorded_at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.US"Z"') AS "recordedAt",
         a.subject_kind AS "subjectKind", a.subject_id AS "subjectId", a.details
  FROM audit_entries a LEFT JOIN people p ON p.id = a.person_id
  WHERE a.practice_id = current_practice()
    AND ($1::text IS NULL OR a.subject_kind = $1)
    AND ($2::text IS NULL OR a.subject_id = $2)
    AND ($3::uuid IS NULL OR a.person_id = $3)
    AND ($4::timestamptz IS NULL OR (a.recorded_at, a.id) < ($4::timestamptz, $5::uuid))
  ORDER BY a.recorded_at DESC, a.id DESC LIMIT $6`;
