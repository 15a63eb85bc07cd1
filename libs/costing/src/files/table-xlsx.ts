import ExcelJS from 'exceljs';
import type { CsvCell } from '../domain/csv.js';
import type { ColumnKind, Table } from '../domain/table.js';

const FORMATS: Partial<Record<ColumnKind, string>> = {
  whole: '0',
  decimal: '0.######',
  money: '#,##0.00####',
  share: '0.00%',
  date: 'yyyy-mm-dd',
};

const PLAIN_NUMBER = /^-?\d+(\.\d+)?$/;
const DAY = /^\d{4}-\d{2}-\d{2}$/;
const MOST_DIGITS = 15; // what a number of a spreadsheet holds; more stays text

/**
 * A table as a workbook of one sheet. Numbers are numbers and days are days; text is always text,
 * so that nothing in it can become a formula.
 */
export async function tableXlsx(table: Table): Promise<Buffer> {
  const book = new ExcelJS.Workbook();
  const sheet = book.addWorksheet(table.title.slice(0, 31), {
    views: [{ state: 'frozen', ySplit: 1 }],
  });
  sheet.columns = table.columns.map(({ name, kind }) => ({
    header: name,
    width: Math.max(12, Math.min(40, name.length + 4)),
    ...(FORMATS[kind] ? { style: { numFmt: FORMATS[kind] } } : {}),
  }));
  sheet.getRow(1).font = { bold: true };
  for (const row of table.rows) {
    sheet.addRow(row.map((cell, i) => typed(cell, table.columns[i]?.kind ?? 'text')));
  }
  return Buffer.from(await book.xlsx.writeBuffer());
}

function typed(cell: CsvCell, kind: ColumnKind): string | number | Date | null {
  if (cell === null || typeof cell === 'number' || kind === 'text') return cell;
  if (kind === 'date') return DAY.test(cell) ? new Date(`${cell}T00:00:00Z`) : cell;
  const exact = PLAIN_NUMBER.test(cell) && cell.replace(/\D/g, '').length <= MOST_DIGITS;
  return exact ? Number(cell) : cell;
}
