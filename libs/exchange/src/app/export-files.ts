import { Injectable } from '@nestjs/common';
import { type Actor, UnitOfWork } from '#lib/platform';
import { exportRows } from '../db/export-rows.js';
import type { Language } from '../domain/column.js';
import { type ImportKind, KINDS, type Kind } from '../domain/kinds.js';
import { type ListTable, listTable, templateTable } from '../domain/list-table.js';
import { listCsv, listsXlsx } from '../files/write-files.js';

export interface AskedFile {
  readonly kind: ImportKind;
  readonly format: 'csv' | 'xlsx';
  readonly language: Language;
}

/** Writes what the book has, and empty lists to fill in, as files that an import reads back. */
@Injectable()
export class ExportFiles {
  constructor(private readonly uow: UnitOfWork) {}

  /** One list, or a workbook of all; all of it as of one moment. */
  async run(actor: Actor, { kind, format, language }: AskedFile): Promise<Buffer> {
    const kinds = kindsOf(kind);
    const tables = await this.uow.read(actor.practiceId, async (tx) => {
      const made: ListTable[] = [];
      for (const each of kinds) {
        made.push(listTable(each, await exportRows(tx, actor, each), language));
      }
      return made;
    });
    return fileOf(tables, kinds, { format, language });
  }

  template({ kind, format, language }: AskedFile): Promise<Buffer> {
    const kinds = kindsOf(kind);
    const tables = kinds.map((each) => templateTable(each, language));
    return fileOf(tables, kinds, { format, language });
  }
}

function kindsOf(kind: ImportKind): readonly Kind[] {
  return kind === 'book' ? KINDS : [kind];
}

async function fileOf(
  tables: readonly ListTable[],
  kinds: readonly Kind[],
  { format, language }: Pick<AskedFile, 'format' | 'language'>,
): Promise<Buffer> {
  const [first] = tables;
  if (format === 'csv' && first) return listCsv(first);
  return listsXlsx(tables, kinds, language);
}
