import { createHash } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import { recordAudit } from '#lib/access';
import {
  type Actor,
  type Claimed,
  newId,
  Refused,
  refuse,
  type Tx,
  UnitOfWork,
} from '#lib/platform';
import { findRun, finishRun, ImportLog } from '../db/import-log.js';
import { type RawFile, UnreadableFile } from '../domain/sheet.js';
import { refuseExchange } from '../exchange.refusals.js';
import { readFile } from '../files/read-file.js';
import type { CheckedImportDto, ImportRunDto } from '../http/imports.dto.js';
import { BringIn, type ImportOptions, type Outcome, rowsOf } from './bring-in.js';
import { checkedView, wrongFields } from './import-view.js';

export interface SentFile {
  readonly bytes: Buffer;
  readonly name: string;
  readonly options: ImportOptions;
}

/** Carries the outcome of a dry run out of its transaction, which it thereby rolls back. */
class DryRun extends Error {
  constructor(readonly outcome: Outcome) {
    super('A dry run is never kept');
  }
}

/** Checks and brings in files: all rows of a file or none. */
@Injectable()
export class ImportFile {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly bringIn: BringIn,
    private readonly log: ImportLog,
  ) {}

  /** What would become of each row. It goes the whole way of an import and is then rolled back. */
  async check(actor: Actor, sent: SentFile, shown: number): Promise<CheckedImportDto> {
    const raw = await readable(() => readFile(sent.bytes, sent.name));
    const { options } = sent;
    try {
      await this.uow.run(actor.practiceId, async (tx) => {
        const outcome = await readable(() => this.bringIn.run(tx, actor, { raw, options }));
        throw new DryRun(outcome);
      });
    } catch (error) {
      if (error instanceof DryRun) return checkedView(error.outcome, shown);
      throw error;
    }
    throw new Error('A dry run was kept');
  }

  /** Brings the file in once per key; refuses it as a whole when any row has an error. */
  async run(
    actor: Actor,
    key: string,
    sent: SentFile & { readonly id?: string | undefined },
  ): Promise<Claimed<ImportRunDto>> {
    const raw = await readable(() => readFile(sent.bytes, sent.name));
    const fileHash = createHash('sha256').update(sent.bytes).digest('hex');
    const { kind, byHand, ignoreUnknown } = sent.options;
    const body = { kind, fileHash, name: sent.name, byHand: [...byHand], ignoreUnknown };
    const id = sent.id ?? newId();
    const rows = await readable(async () => rowsOf(raw, kind));
    return this.uow.runOnce({ actor, key, operation: 'POST /api/imports', body }, async (tx) => {
      await this.log.begin(actor, { id, kind, fileName: sent.name, fileHash, rows });
      try {
        return await this.keep(tx, actor, { id, raw, sent });
      } catch (error) {
        const reason = error instanceof Refused ? error.message : 'It broke off on our side.';
        await this.log.refused(actor, id, reason);
        throw error;
      }
    });
  }

  private async keep(
    tx: Tx,
    actor: Actor,
    of: { readonly id: string; readonly raw: RawFile; readonly sent: SentFile },
  ): Promise<ImportRunDto> {
    const { id, raw, sent } = of;
    const file = { raw, options: sent.options };
    const outcome = await readable(() =>
      this.bringIn.run(tx, actor, file, (rows) => this.log.progress(actor, id, rows)),
    );
    if (!outcome.ready) throw hasErrors(outcome);
    const counts = totals(outcome);
    await finishRun(tx, id, counts);
    await recordAudit(tx, actor, {
      action: 'file.imported',
      subjectKind: 'file',
      subjectId: id,
      details: { kind: sent.options.kind, fileName: sent.name, ...counts },
    });
    const run = await findRun(tx, id);
    if (!run) throw refuse('not_found', 'The import is not in the log.');
    return run;
  }
}

function totals({ sheets }: Outcome) {
  const sum = (of: 'new' | 'changed' | 'same') =>
    sheets.reduce((total, sheet) => total + sheet.counts[of], 0);
  return { newRows: sum('new'), changedRows: sum('changed'), sameRows: sum('same') };
}

function hasErrors(outcome: Outcome) {
  const fields = wrongFields(outcome);
  const [first] = fields;
  const wrong = outcome.sheets.reduce((sum, s) => sum + s.counts.error + s.problems.length, 0);
  const more = wrong > 1 ? ` And ${wrong - 1} more.` : '';
  return refuseExchange('import_has_errors', `${first?.message ?? ''}${more}`, fields);
}

/** A file that cannot be read is the sender's to mend. */
async function readable<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    if (!(error instanceof UnreadableFile)) throw error;
    throw refuseExchange('file_unreadable', error.message, [
      { field: 'file', message: error.message },
    ]);
  }
}
