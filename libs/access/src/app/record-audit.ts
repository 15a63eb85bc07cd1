import { newId, type Tx } from '#lib/platform';

/** On whose behalf something was done; nobody when a stranger tried. */
export interface AuditedBy {
  readonly personId: string | null;
}

export interface AuditEntry {
  /** What was done, e.g. 'supplier.changed'. */
  readonly action: string;
  readonly subjectKind: string;
  readonly subjectId: string;
  readonly details?: Readonly<Record<string, unknown>>;
}

/** Writes to the audit trail in the same transaction as the change, so neither is without the other. */
export async function recordAudit(tx: Tx, by: AuditedBy, entry: AuditEntry): Promise<void> {
  await tx.named(
    'access_record_audit',
    `INSERT INTO audit_entries (id, practice_id, person_id, action, subject_kind, subject_id, details)
     VALUES ($1, $2, $3, $4, $5, $6, $7::jsonb)`,
    [
      newId(),
      tx.practiceId,
      by.personId,
      entry.action,
      entry.subjectKind,
      entry.subjectId,
      JSON.stringify(entry.details ?? {}, exactly),
    ],
  );
}

/** The same for many entries at once, e.g. of a whole file. */
export async function recordAudits(
  tx: Tx,
  by: AuditedBy,
  entries: readonly AuditEntry[],
): Promise<void> {
  if (entries.length === 0) return;
  const rows = entries.map(({ details = {}, ...entry }) => ({ id: newId(), ...entry, details }));
  await tx.query(
    `INSERT INTO audit_entries (id, practice_id, person_id, action, subject_kind, subject_id, details)
     SELECT r.id, $2, $3, r.action, r."subjectKind", r."subjectId", r.details
     FROM json_to_recordset($1::json) AS r(id uuid, action text, "subjectKind" text,
       "subjectId" text, details jsonb)`,
    [JSON.stringify(rows, exactly), tx.practiceId, by.personId],
  );
}

function exactly(_key: string, value: unknown): unknown {
  return typeof value === 'bigint' ? value.toString() : value;
}
