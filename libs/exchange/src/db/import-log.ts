import { Injectable } from '@nestjs/common';
import { type Actor, refuse, type Tx, UnitOfWork } from '#lib/platform';
import type { ImportRunDto } from '../http/imports.dto.js';

export interface BegunImport {
  readonly id: string;
  readonly kind: string;
  readonly fileName: string;
  readonly fileHash: string;
  readonly rows: number;
}

export interface ImportCounts {
  readonly newRows: number;
  readonly changedRows: number;
  readonly sameRows: number;
}

const COLUMNS = `
  i.id, i.kind, i.file_name AS "fileName",
  CASE WHEN i.state = 'running' AND i.touched_at < now() - interval '10 minutes'
       THEN 'broken off' ELSE i.state END AS state,
  i.rows_total AS "rowsTotal", i.rows_done AS "rowsDone", i.rows_new AS "newRows",
  i.rows_changed AS "changedRows", i.rows_same AS "sameRows", i.reason,
  p.display_name AS "importedBy", i.started_at AS "startedAt"`;

/**
 * What was brought in, and how far it is. An import writes its progress in transactions of their own,
 * because nobody sees its own one before it ends.
 */
@Injectable()
export class ImportLog {
  constructor(private readonly uow: UnitOfWork) {}

  async begin(actor: Actor, run: BegunImport): Promise<void> {
    await this.uow.run(actor.practiceId, (tx) =>
      tx.query(
        `INSERT INTO file_imports (id, practice_id, kind, file_name, file_hash, state, rows_total,
           rows_done, imported_by)
         VALUES ($1, current_practice(), $2, $3, $4, 'running', $5, 0, $6)
         ON CONFLICT (id) DO UPDATE SET state = 'running', rows_total = excluded.rows_total,
           rows_done = 0, reason = NULL, touched_at = now()`,
        [run.id, run.kind, run.fileName, run.fileHash, run.rows, actor.personId],
      ),
    );
  }

  async progress(actor: Actor, id: string, rows: number): Promise<void> {
    await this.uow.run(actor.practiceId, (tx) =>
      tx.query(
        `UPDATE file_imports SET rows_done = least($2, rows_total), touched_at = now() WHERE id = $1`,
        [id, rows],
      ),
    );
  }

  async refused(actor: Actor, id: string, reason: string): Promise<void> {
    await this.uow.run(actor.practiceId, (tx) =>
      tx.query(
        `UPDATE file_imports SET state = 'refused', reason = $2, touched_at = now() WHERE id = $1`,
        [id, reason.slice(0, 1000)],
      ),
    );
  }

  async get(actor: Actor, id: string): Promise<ImportRunDto> {
    const found = await this.uow.read(actor.practiceId, (tx) => findRun(tx, id));
    if (!found) throw refuse('not_found', 'There is no import with this id.');
    return found;
  }

  async latest(actor: Actor): Promise<{ items: ImportRunDto[] }> {
    const items = await this.uow.read(actor.practiceId, (tx) =>
      tx.query<Row>(
        `SELECT ${COLUMNS} FROM file_imports i JOIN people p ON p.id = i.imported_by
         ORDER BY i.started_at DESC, i.id DESC LIMIT 20`,
      ),
    );
    return { items: items.map(view) };
  }
}

type Row = Omit<ImportRunDto, 'startedAt'> & { readonly startedAt: Date | string };

function view(row: Row): ImportRunDto {
  return { ...row, startedAt: new Date(row.startedAt).toISOString() };
}

export async function findRun(tx: Tx, id: string): Promise<ImportRunDto | undefined> {
  const [row] = await tx.query<Row>(
    `SELECT ${COLUMNS} FROM file_imports i JOIN people p ON p.id = i.imported_by WHERE i.id = $1`,
    [id],
  );
  return row && view(row);
}

/** Written with the import itself, so that neither is without the other. */
export async function finishRun(tx: Tx, id: string, counts: ImportCounts): Promise<void> {
  const total = counts.newRows + counts.changedRows + counts.sameRows;
  await tx.query(
    `UPDATE file_imports SET state = 'done', rows_total = $2, rows_done = $2, rows_new = $3,
       rows_changed = $4, rows_same = $5, touched_at = now() WHERE id = $1`,
    [id, total, counts.newRows, counts.changedRows, counts.sameRows],
  );
}
