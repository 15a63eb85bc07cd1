import PDFDocument from 'pdfkit';
import { type Paper, paperOf } from '../domain/paper.js';
import type { Column, Table } from '../domain/table.js';
import { FILE_WORDS } from '../domain/table-words.js';

const MARGIN = 42;
const FOOT = 30;
const SIZES = [8.5, 7.5, 6.75] as const; // the largest that fits
const WIDEST = 210; // no column of text is wider than this
const NARROWEST = 34;
const CUT = 0.55; // of what a text wants to be wide, before the letters become smaller
const [INK, QUIET, LINE] = ['#23201c', '#5f574d', '#d4ccbe'];

type Document = PDFKit.PDFDocument;

interface Layout {
  readonly columns: readonly Column[];
  readonly widths: readonly number[];
  readonly size: number;
  readonly gap: number;
}

const isText = ({ kind }: Column) => kind === 'text' || kind === 'date';

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
  draw(document, paperOf(table));
  document.end();
  await ended;
  return Buffer.concat(parts);
}

function draw(document: Document, paper: Paper): void {
  const layout = layoutOf(document, paper);
  let y = header(document, layout, head(document, paper));
  const bottom = document.page.height - MARGIN - FOOT;
  for (const row of paper.rows) {
    if (y + heightOf(document, layout, row) > bottom) {
      document.addPage();
      y = header(document, layout, MARGIN);
    }
    y = line(document, layout, row, y);
    rule(document, y - layout.size * 0.5, LINE, 0.4);
  }
  if (paper.rows.length === 0) {
    document
      .fillColor(QUIET)
      .text(FILE_WORDS[paper.language].nothing, MARGIN, y, { lineBreak: false });
  } else if (paper.totals) {
    document.font('Helvetica-Bold');
    rule(document, y - layout.size * 0.5, INK, 0.8);
    line(document, layout, paper.totals, y + 1);
  }
  footers(document, paper);
}

/** Title and what the report was made for; the height where the table begins. */
function head(document: Document, { title, facts }: Paper): number {
  const width = document.page.width - 2 * MARGIN;
  document.font('Helvetica-Bold').fontSize(17).fillColor(INK);
  document.text(printable(title), MARGIN, MARGIN, { width });
  if (facts.length === 0) return document.y + 14;
  document.font('Helvetica').fontSize(9).fillColor(QUIET);
  document.text(printable(facts.join('  ')), MARGIN, document.y + 3, { width });
  return document.y + 16;
}

/** As wide as what stands there, in the largest letters in which it fits. */
function layoutOf(document: Document, paper: Paper): Layout {
  const layouts = SIZES.map((size) => sizedLayout(document, paper, size));
  const [fits] = layouts.filter(({ enough }) => enough);
  return (fits ?? layouts.at(-1) ?? sizedLayout(document, paper, SIZES[0])).layout;
}

function sizedLayout(document: Document, { columns, rows, totals }: Paper, size: number) {
  const gap = size * 1.35;
  const room = document.page.width - 2 * MARGIN - gap * (columns.length - 1);
  document.font('Helvetica-Bold').fontSize(size);
  const wanted = columns.map((column, i) => {
    const cells = [...rows, totals ?? []].map((row) => row[i] ?? '');
    const words = [...cells, ...column.name.split(' ')];
    const longest = Math.max(...words.map((text) => document.widthOfString(printable(text)) + 1));
    return Math.max(NARROWEST, isText(column) ? Math.min(WIDEST, longest) : longest);
  });
  const sumOf = (list: readonly number[]) => list.reduce((a, b) => a + b, 0);
  const numbers = sumOf(wanted.filter((_, i) => !columns.slice(i, i + 1).some(isText)));
  const texts = sumOf(wanted) - numbers;
  // Numbers are never cut; text goes on in a second line.
  const ofTexts = texts === 0 ? 1 : (room - numbers) / texts;
  const enough = texts === 0 ? numbers <= room : ofTexts >= CUT;
  const spread = Math.min(room / sumOf(wanted), 1.6);
  const widths = wanted.map((width, i) => {
    if (spread >= 1) return width * spread;
    return columns.slice(i, i + 1).some(isText) ? width * Math.max(ofTexts, 0.2) : width;
  });
  return { layout: { columns, widths, size, gap }, enough };
}

/** Names in up to two lines, standing on the rule. */
function header(document: Document, layout: Layout, y: number): number {
  const { columns, widths, size, gap } = layout;
  document.font('Helvetica-Bold').fontSize(size).fillColor(QUIET);
  const heights = columns.map(({ name }, i) =>
    document.heightOfString(name, { width: (widths[i] ?? 0) + 1 }),
  );
  const high = Math.max(...heights);
  let x = MARGIN;
  columns.forEach((column, i) => {
    const width = widths[i] ?? 0;
    const align = isText(column) ? 'left' : 'right';
    const top = y + high - (heights[i] ?? 0);
    document.text(printable(column.name), x, top, { width: width + 1, align });
    x += width + gap;
  });
  const wide = widths.reduce((a, b) => a + b, 0) + gap * (widths.length - 1);
  rule(document, y + high + 2, INK, 0.8, wide);
  document.font('Helvetica').fontSize(size).fillColor(INK);
  return y + high + 8;
}

/** A text that is too long goes on below, and ends after two lines. */
function linesOf(document: Document, text: string, width: number): string[] {
  if (document.widthOfString(text) <= width + 1) return [text];
  const words = text.split(' ');
  let first = words.shift() ?? '';
  while (words.length > 0 && document.widthOfString(`${first} ${words[0]}`) <= width) {
    first = `${first} ${words.shift()}`;
  }
  return [fitting(document, first, width), fitting(document, words.join(' '), width)];
}

function cellLines(document: Document, layout: Layout, cells: readonly string[]): string[][] {
  return cells.map((cell, i) => linesOf(document, printable(cell), layout.widths[i] ?? 0));
}

function heightOf(document: Document, layout: Layout, cells: readonly string[]): number {
  const most = Math.max(...cellLines(document, layout, cells).map(({ length }) => length));
  return most * layout.size * 1.2 + layout.size * 0.8;
}

function line(document: Document, layout: Layout, cells: readonly string[], y: number): number {
  let x = MARGIN;
  cellLines(document, layout, cells).forEach((lines, i) => {
    const width = layout.widths[i] ?? 0;
    const align = layout.columns.slice(i, i + 1).some(isText) ? 'left' : 'right';
    lines.forEach((text, at) => {
      const top = y + at * layout.size * 1.2;
      document.text(text, x, top, { width: width + 1, align, lineBreak: false });
    });
    x += width + layout.gap;
  });
  return y + heightOf(document, layout, cells);
}

function rule(document: Document, y: number, color: string, thick: number, long?: number): void {
  const width = long ?? document.page.width - 2 * MARGIN;
  document
    .moveTo(MARGIN, y)
    .lineTo(MARGIN + width, y)
    .lineWidth(thick)
    .strokeColor(color)
    .stroke();
}

/** The built-in fonts know Latin letters only; another one is shown as a question mark. */
function printable(cell: string): string {
  return cell.replace(/[^\u0020-\u007e\u00a0-\u00ff€–—‘’“”…]/gu, '?');
}

function fitting(document: Document, text: string, width: number): string {
  if (document.widthOfString(text) <= width + 1) return text;
  let kept = text;
  while (kept.length > 1 && document.widthOfString(`${kept}…`) > width) kept = kept.slice(0, -1);
  return `${kept}…`;
}

function footers(document: Document, { title, language }: Paper): void {
  const words = FILE_WORDS[language];
  const { start, count } = document.bufferedPageRange();
  for (let page = start; page < start + count; page += 1) {
    document.switchToPage(page);
    const y = document.page.height - MARGIN + 4;
    // Below the margin pdfkit would begin another page.
    document.page.margins.bottom = 0;
    document.font('Helvetica').fontSize(7.5).fillColor(QUIET);
    document.text(words.caution, MARGIN, y, { lineBreak: false });
    const number = `${printable(title)}, ${words.page(page - start + 1, count)}`;
    const width = document.page.width - 2 * MARGIN;
    document.text(number, MARGIN, y, { width, align: 'right', lineBreak: false });
  }
}
