import type { FastifyReply } from 'fastify';
import { type Table, tableCsv } from '../domain/table.js';
import { tablePdf } from '../files/table-pdf.js';
import { tableXlsx } from '../files/table-xlsx.js';

const MEDIA_TYPES = {
  csv: 'text/csv; charset=utf-8',
  xlsx: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
  pdf: 'application/pdf',
} as const;

export type FileForm = keyof typeof MEDIA_TYPES;
export type FileContent = string | Buffer;

export const XLSX = MEDIA_TYPES.xlsx;
export const PDF = MEDIA_TYPES.pdf;
export const CSV_TEXT = { schema: { type: 'string' as const }, description: 'CSV (RFC 4180).' };
export const XLSX_FILE = {
  schema: { type: 'string' as const, format: 'binary' },
  description: 'A workbook (Office Open XML).',
};
export const PDF_FILE = {
  schema: { type: 'string' as const, format: 'binary' },
  description: 'For printing.',
};

/** The file that Accept asks for; undefined: JSON. The first one named counts. */
export function wantedForm(
  accept: string | undefined,
  forms: readonly FileForm[] = ['csv', 'xlsx', 'pdf'],
): FileForm | undefined {
  const named = (accept ?? '').split(',').map((part) => part.split(';')[0]?.trim().toLowerCase());
  for (const name of named) {
    const form = forms.find((each) => MEDIA_TYPES[each].split(';')[0] === name);
    if (form) return form;
    if (name === 'application/json') return undefined;
  }
  return undefined;
}

/** Makes the file of a table and marks the answer as one. */
export async function asFile(
  reply: FastifyReply,
  form: FileForm,
  table: Table,
): Promise<FileContent> {
  const content = await contentOf(form, table);
  void reply
    .header('Content-Type', MEDIA_TYPES[form])
    .header('Content-Disposition', `attachment; filename="${table.name}.${form}"`);
  return content;
}

async function contentOf(form: FileForm, table: Table): Promise<FileContent> {
  if (form === 'csv') return tableCsv(table);
  return form === 'xlsx' ? tableXlsx(table) : tablePdf(table);
}
