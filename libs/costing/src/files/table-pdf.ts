import PDFDocument from 'pdfkit';
import type { CsvCell } from '../domain/csv.js';
import type { Column, Table } from '../domain/table.js';

const CAUTION =
  'Figures are planning aids. Instructions for use, local rules and licensed practice come first.';
const MARGIN = 36;
const ROW = 14;
const SIZE = 8;
const GAP = 4;
const WIDE = 2.2; // a column of text beside one of numbers

type Document = PDFKit.PDFDocument;

interface Layout {
  readonly columns: readonly Column[];
  readonly widths: readonly number[];
}

/** A table on A4, across: on every page the header, its number and the caution. */
export async function tablePdf(table: Table): Promise<Buffer> {
  const document = new PDFDocument({
    size: 'A4',
    layout: 'landscape',
    margin: MARGIN,
    bufferPages: true,
    info: { Title: table.title },
  });
  const parts: Buffer[] = [];
  const ended = new Promise<void>((resolve, reject) => {
    document.on('data', (part: Buffer) => parts.push(part));
    document.on('end', resolve);
    document.on('error', reject);
  });
  draw(document, table);
  document.end();
  await ended;
  return Buffer.concat(parts);
}

function draw(document: Document, table: Table): void {
  const layout = layoutOf(document, table.columns);
  document.font('Helvetica-Bold').fontSize(13).text(table.title, MARGIN, MARGIN);
  let y = header(document, layout, MARGIN + 24);
  for (const row of table.rows) {
    if (y > document.page.height - MARGIN - 2 * ROW) {
      document.addPage();
      y = header(document, layout, MARGIN);
    }
    y = line(document, layout, row, y);
  }
  if (table.rows.length === 0) line(document, layout, ['Nothing in this period.'], y);
  footers(document);
}

function layoutOf(document: Document, columns: readonly Column[]): Layout {
  const weights = columns.map(({ kind }) => (kind === 'text' ? WIDE : 1));
  const sum = weights.reduce((a, b) => a + b, 0);
  const room = document.page.width - 2 * MARGIN;
  return { columns, widths: weights.map((weight) => (weight / sum) * room) };
}

function header(document: Document, layout: Layout, y: number): number {
  document.font('Helvetica-Bold').fontSize(SIZE);
  const names = layout.columns.map(({ name }) => name);
  const next = line(document, layout, names, y);
  const end = document.page.width - MARGIN;
  document
    .moveTo(MARGIN, next - 3)
    .lineTo(end, next - 3)
    .lineWidth(0.5)
    .stroke();
  document.font('Helvetica').fontSize(SIZE);
  return next + 2;
}

function line(document: Document, layout: Layout, cells: readonly CsvCell[], y: number): number {
  let x = MARGIN;
  cells.forEach((cell, i) => {
    const width = (layout.widths[i] ?? 0) - GAP;
    const align = layout.columns[i]?.kind === 'text' ? 'left' : 'right';
    const text = fitting(document, printable(cell), width);
    document.text(text, x, y, { width, align, lineBreak: false });
    x += width + GAP;
  });
  return y + ROW;
}

/** The built-in fonts know Latin letters only; another one is shown as a question mark. */
function printable(cell: CsvCell): string {
  return String(cell ?? '').replace(/[^\u0020-\u007e\u00a0-\u00ff€–—‘’“”…]/gu, '?');
}

function fitting(document: Document, text: string, width: number): string {
  if (document.widthOfString(text) <= width) return text;
  let kept = text;
  while (kept.length > 1 && document.widthOfString(`${kept}…`) > width) kept = kept.slice(0, -1);
  return `${kept}…`;
}

function footers(document: Document): void {
  const { start, count } = document.bufferedPageRange();
  for (let page = start; page < start + count; page += 1) {
    document.switchToPage(page);
    const y = document.page.height - MARGIN - 4;
    // Below the margin pdfkit would begin another page.
    document.page.margins.bottom = 0;
    document.font('Helvetica').fontSize(7).text(CAUTION, MARGIN, y, { lineBreak: false });
    const number = `Page ${page - start + 1} of ${count}`;
    const width = document.page.width - 2 * MARGIN;
    document.text(number, MARGIN, y, { width, align: 'right', lineBreak: false });
  }
}
