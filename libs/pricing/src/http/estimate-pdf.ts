import PDFDocument from 'pdfkit';
import { formatMoney, type Money, money, sum } from '#lib/measure';
import { currencyDigits, printable } from '#lib/platform';
import { amountText, dayText, ESTIMATE_WORDS, type EstimateWords } from './estimate-words.js';
import type { Language } from './quote.dto.js';
import type { QuoteDto, QuotedLineDto, QuotedWayDto } from './quote-answer.dto.js';

export interface Estimate {
  readonly practiceName: string;
  readonly quote: QuoteDto;
  readonly way: QuotedWayDto;
  readonly language: Language;
  readonly printedAt: Date;
}

type Pdf = InstanceType<typeof PDFDocument>;

interface Sheet {
  readonly pdf: Pdf;
  readonly words: EstimateWords;
  readonly estimate: Estimate;
}

const LEFT = 56;
const RIGHT = 539;
const WIDTH = RIGHT - LEFT;
const BOTTOM = 752;
const FOOT = 786;
/** Where each column ends, right-aligned; the first is as wide as the rest leaves. */
const ENDS = [262, 320, 376, 464, RIGHT] as const;
const INK = '#23201c';
const QUIET = '#5f574d';
const LINE = '#cfc6b6';
const ACCENT = '#0b5a63';

/** The estimate that a patient takes home: one page for most, the two kinds of work kept apart. */
export function printEstimate(estimate: Estimate): Promise<Buffer> {
  const { language, practiceName, printedAt } = estimate;
  const words = ESTIMATE_WORDS[language];
  const pdf = new PDFDocument({
    size: 'A4',
    margin: LEFT,
    lang: language,
    displayTitle: true,
    bufferPages: true,
    info: { Title: words.title, Author: printable(practiceName), CreationDate: printedAt },
  });
  const chunks: Buffer[] = [];
  const done = new Promise<Buffer>((resolve, reject) => {
    pdf.on('data', (chunk: Buffer) => chunks.push(chunk));
    pdf.on('end', () => resolve(Buffer.concat(chunks)));
    pdf.on('error', reject);
  });
  const sheet = { pdf, words, estimate };
  heading(sheet);
  groups(sheet);
  closing(sheet);
  footers(sheet);
  pdf.end();
  return done;
}

function heading({ pdf, words, estimate }: Sheet): void {
  const { practiceName, quote, language } = estimate;
  pdf.font('Helvetica').fontSize(10).fillColor(QUIET).text(printable(practiceName), LEFT, LEFT);
  pdf.moveDown(0.6).font('Helvetica-Bold').fontSize(22).fillColor(INK).text(words.title);
  pdf.moveDown(0.5);
  rule(pdf, ACCENT, 1.5);
  pdf.y += 12;
  const { plan } = quote;
  const facts: [string, string][] = [
    [words.chart, quote.chartReference ?? ''],
    [words.date, dayText(quote.quotedOn, language)],
    [words.plan, plan?.name ?? words.noPlan],
  ];
  if (plan) {
    const show = shower(estimate);
    const left = words.left(
      show(money(plan.deductibleLeft)),
      plan.maximumLeft === null ? null : show(money(plan.maximumLeft)),
    );
    const asOf = words.asOf(dayText(plan.leftAsOf ?? quote.quotedOn, language));
    facts.push([words.leftOfPlan, `${left} ${asOf}`]);
  }
  facts.push([words.amountsIn, quote.currency]);
  for (const fact of facts) factRow(pdf, fact);
}

function factRow(pdf: Pdf, [label, value]: readonly [string, string]): void {
  const top = pdf.y;
  pdf.font('Helvetica').fontSize(9.5).fillColor(QUIET).text(label, LEFT, top, { width: 118 });
  pdf.fillColor(INK).text(printable(value), LEFT + 126, top, { width: WIDTH - 126 });
  pdf.x = LEFT;
  pdf.y += 3;
}

function groups(sheet: Sheet): void {
  const { pdf, words, estimate } = sheet;
  const { way, quote } = estimate;
  const isCosmetic = (line: QuotedLineDto) =>
    quote.restorations[line.restoration]?.reason === 'cosmetic';
  const parts = [
    ['insured', way.lines.filter((line) => !isCosmetic(line))],
    ['cosmetic', way.lines.filter(isCosmetic)],
  ] as const;
  for (const [kind, lines] of parts) {
    if (lines.length === 0) continue;
    makeRoom(pdf, 110);
    pdf.y += 20;
    pdf.font('Helvetica-Bold').fontSize(12.5).fillColor(INK).text(words.groups[kind], LEFT);
    pdf.y += 6;
    pdf.font('Helvetica').fontSize(8.5).fillColor(QUIET);
    row(pdf, words.columns.map(plainCell));
    rule(pdf, QUIET, 0.7);
    for (const line of lines) lineRow(line, sheet);
    if (lines.length > 1) sumRow(words.sum, lines, sheet);
  }
  makeRoom(pdf, 44);
  pdf.y += 16;
  rule(pdf, INK, 1.2);
  pdf.y += 2;
  sumRow(words.total, way.lines, sheet, 11);
  if (money(way.writeOff) > 0n) {
    pdf.font('Helvetica').fontSize(8.5).fillColor(QUIET);
    pdf.text(words.reduction, LEFT, pdf.y + 2, { width: WIDTH });
  }
}

/** A cell of a table: its words, and perhaps quieter ones below them. */
interface Cell {
  readonly words: string;
  readonly below?: string;
}

const plainCell = (words: string): Cell => ({ words });

function lineRow(line: QuotedLineDto, { pdf, words, estimate }: Sheet): void {
  const made = estimate.quote.restorations[line.restoration];
  if (!made) throw new Error('An estimate names a restoration that the quote lacks');
  const below = [
    made.feeCode ? `${made.template.name} (${made.feeCode})` : made.template.name,
    words.reasons[made.reason as keyof EstimateWords['reasons']],
  ];
  if (estimate.way.visits.length > 1) below.push(words.visit(line.visit + 1));
  if (estimate.quote.plan && !line.covered) below.push(words.notCovered);
  const work = `${words.tooth} ${made.tooth} ${made.surfaces}`;
  pdf.font('Helvetica').fontSize(9.5).fillColor(INK);
  pdf.y += 5;
  row(pdf, [
    { words: printable(work), below: printable(below.join(', ')) },
    ...amounts([line], estimate).map(plainCell),
  ]);
  rule(pdf, LINE, 0.5);
}

function sumRow(label: string, lines: readonly QuotedLineDto[], sheet: Sheet, size = 9.5): void {
  const { pdf, estimate } = sheet;
  pdf.font('Helvetica-Bold').fontSize(size).fillColor(INK);
  pdf.y += 3;
  row(pdf, [label, ...amounts(lines, estimate)].map(plainCell));
}

function amounts(lines: readonly QuotedLineDto[], estimate: Estimate): string[] {
  const show = shower(estimate);
  return (['fee', 'writeOff', 'planPays', 'patientPays'] as const).map((field) =>
    show(sum(lines.map((line) => money(line[field])))),
  );
}

function shower({ quote: { currency }, language }: Estimate): (amount: Money) => string {
  const digits = currencyDigits(currency);
  return (amount) => amountText(formatMoney(amount, digits), digits, language);
}

function row(pdf: Pdf, cells: readonly Cell[]): void {
  const words = cells.map((cell, i) => pdf.heightOfString(cell.words, { width: widthOf(i) }));
  const below = cells.map((cell, i) => belowHeight(pdf, cell, i));
  const height = Math.max(...words.map((high, i) => high + (below[i] ?? 0)));
  makeRoom(pdf, height);
  const top = pdf.y;
  cells.forEach((cell, i) => {
    const width = widthOf(i);
    const left = (ENDS[i] ?? RIGHT) - width;
    pdf.text(cell.words, left, top, { width, align: i === 0 ? 'left' : 'right' });
    if (cell.below !== undefined)
      quietly(pdf, () => pdf.text(cell.below ?? '', left, pdf.y, { width }));
  });
  pdf.x = LEFT;
  pdf.y = top + height + 4;
}

function belowHeight(pdf: Pdf, { below }: Cell, column: number): number {
  if (below === undefined) return 0;
  let height = 0;
  quietly(pdf, () => {
    height = pdf.heightOfString(below, { width: widthOf(column) });
  });
  return height;
}

/** In the smaller voice of what stands below, and back again. */
function quietly(pdf: Pdf, write: () => void): void {
  pdf.font('Helvetica').fontSize(8.5).fillColor(QUIET);
  write();
  pdf.fontSize(9.5).fillColor(INK);
}

function widthOf(column: number): number {
  const end = ENDS[column] ?? RIGHT;
  return column === 0 ? end - LEFT : end - (ENDS[column - 1] ?? LEFT) - 6;
}

function rule(pdf: Pdf, color: string, thickness: number): void {
  pdf.moveTo(LEFT, pdf.y).lineTo(RIGHT, pdf.y).lineWidth(thickness).strokeColor(color).stroke();
}

function makeRoom(pdf: Pdf, height: number): void {
  if (pdf.y + height > BOTTOM) pdf.addPage();
}

function closing({ pdf, words }: Sheet): void {
  makeRoom(pdf, 150);
  pdf.y += 22;
  const top = pdf.y;
  pdf.font('Helvetica-Bold').fontSize(10).fillColor(INK);
  pdf.text(words.caution, LEFT + 12, top, { width: WIDTH - 12 });
  pdf.font('Helvetica').text(words.changes, LEFT + 12, pdf.y + 4, { width: WIDTH - 12 });
  pdf.moveTo(LEFT + 1, top - 2).lineTo(LEFT + 1, pdf.y + 1);
  pdf.lineWidth(2).strokeColor(ACCENT).stroke();
  pdf.y += 52;
  const under = pdf.y;
  pdf.lineWidth(0.7).strokeColor(QUIET);
  pdf
    .moveTo(LEFT, under)
    .lineTo(LEFT + 130, under)
    .stroke();
  pdf
    .moveTo(LEFT + 160, under)
    .lineTo(RIGHT - 100, under)
    .stroke();
  pdf.fontSize(8.5).fillColor(QUIET);
  pdf.text(words.day, LEFT, under + 4, { width: 130 });
  pdf.text(words.signature, LEFT + 160, under + 4);
}

/** On every page what it is and whose, so that a page that went astray says that it is an estimate. */
function footers({ pdf, words, estimate }: Sheet): void {
  const { start, count } = pdf.bufferedPageRange();
  for (let page = 0; page < count; page += 1) {
    pdf.switchToPage(start + page);
    // Below the margin, where text would otherwise start another page.
    pdf.page.margins.bottom = 0;
    const chart = printable(estimate.quote.chartReference ?? '');
    pdf.font('Helvetica').fontSize(8).fillColor(QUIET);
    pdf.text(`${words.title}, ${chart}`, LEFT, FOOT, { lineBreak: false });
    pdf.text(words.page(page + 1, count), LEFT, FOOT, { width: WIDTH, align: 'right' });
  }
}
