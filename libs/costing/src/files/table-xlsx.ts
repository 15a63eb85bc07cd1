import type ExcelJS from 'exceljs';
import type { CsvCell } from '#lib/platform';
import { cellText } from '../domain/paper.js';
import type { Column, ColumnKind, Table } from '../domain/table.js';
import { FILE_WORDS } from '../domain/table-words.js';

const FORMATS: Partial<Record<ColumnKind, string>> = {
  whole: '#,##0',
  decimal: '#,##0.######',
  money: '#,##0.00',
  price: '#,##0.00####',
  share: '0.0%',
  date: 'yyyy-mm-dd',
};

const PLAIN_NUMBER = /^-?\d+(\.\d+)?$/;
const DAY = /^\d{4}-\d{2}-\d{2}$/;
const MOST_DIGITS = 15; // what a number of a spreadsheet holds; more stays text
const [NARROWEST, WIDEST] = [9, 44];
const HEAD_FILL = 'FFEEE8DC';

/**
 * A table as a workbook: the rows on the first sheet, what they were made for on the second. Numbers
 * are numbers and days are days; text is always text, so that nothing in it can become a formula.
 */
export async function tableXlsx(table: Table): Promise<Buffer> {
  // Thirty megabytes that most days nobody needs.
  const { default: Excel } = await import('exceljs');
  const book = new Excel.Workbook();
  const sheet = book.addWorksheet(table.title.slice(0, 31), {
    views: [{ state: 'frozen', ySplit: 1 }],
    pageSetup: { orientation: 'landscape', fitToPage: true, fitToWidth: 1, fitToHeight: 0 },
    headerFooter: { oddFooter: `&L${table.title.replaceAll('&', '&&')}&R&P / &N` },
  });
  sheet.pageSetup.printTitlesRow = '1:1';
  sheet.columns = table.columns.map((column, i) => ({
    header: column.name,
    width: widthOf(
      column,
      table.rows.map((row) => row[i] ?? null),
    ),
    style: {
      alignment: { horizontal: column.kind === 'text' ? 'left' : 'right', vertical: 'top' },
      ...(FORMATS[column.kind] ? { numFmt: FORMATS[column.kind] } : {}),
    },
  }));
  for (const row of table.rows) {
    sheet.addRow(row.map((cell, i) => typed(cell, table.columns[i]?.kind ?? 'text')));
  }
  markHead(sheet, table.columns.length);
  addAbout(book, table);
  return Buffer.from(await book.xlsx.writeBuffer());
}

function markHead(sheet: ExcelJS.Worksheet, columns: number): void {
  const head = sheet.getRow(1);
  head.font = { bold: true };
  head.eachCell((cell) => {
    cell.fill = { type: 'pattern', pattern: 'solid', fgColor: { argb: HEAD_FILL } };
    cell.border = { bottom: { style: 'thin' } };
  });
  sheet.autoFilter = { from: { row: 1, column: 1 }, to: { row: 1, column: columns } };
}

function addAbout(book: ExcelJS.Workbook, { title, facts = [], language = 'en' }: Table): void {
  const words = FILE_WORDS[language];
  const about = book.addWorksheet(words.about);
  about.getColumn(1).width = 90;
  about.addRow([title]).font = { bold: true, size: 14 };
  for (const fact of facts) about.addRow([fact]);
  about.addRow([words.caution]).font = { italic: true };
}

/** Room for the longest cell and for the name with the button of its filter. */
function widthOf({ name, kind }: Column, cells: readonly CsvCell[]): number {
  const longest = cells.reduce<number>((most, cell) => {
    return Math.max(most, cellText(cell, kind).length + 2);
  }, name.length + 4);
  return Math.max(NARROWEST, Math.min(WIDEST, longest));
}

function typed(cell: CsvCell, kind: ColumnKind): string | number | Date | null {
  if (cell === null || typeof cell === 'number' || kind === 'text') return cell;
  if (kind === 'date') return DAY.test(cell) ? new Date(`${cell}T00:00:00Z`) : cell;
  const exact = PLAIN_NUMBER.test(cell) && cell.replace(/\D/g, '').length <= MOST_DIGITS;
  return exact ? Number(cell) : cell;
}
