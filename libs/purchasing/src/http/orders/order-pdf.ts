import PDFDocument from 'pdfkit';
import { currencyDigits, printable } from '#lib/platform';
import {
  amountText,
  dayText,
  type OrderWords,
  orderWords,
} from '../../domain/orders/order-words.js';
import type { OrderDto, OrderLineDto } from './order-answers.dto.js';
import { goodsName } from './order-csv.js';

export interface OrderPaper {
  readonly order: OrderDto;
  readonly practiceName: string;
  /** Where the goods go; null: nobody said. */
  readonly deliverTo: string | null;
  readonly printedAt: Date;
}

type Pdf = InstanceType<typeof PDFDocument>;

interface Sheet {
  readonly pdf: Pdf;
  readonly words: OrderWords;
  readonly paper: OrderPaper;
}

const LEFT = 56;
const RIGHT = 539;
const WIDTH = RIGHT - LEFT;
const BOTTOM = 752;
const FOOT = 786;
/** Where each column ends; the last three are right-aligned. */
const ENDS = [LEFT + 22, LEFT + 100, 352, 404, 468, RIGHT] as const;
const [INK, QUIET, LINE, ACCENT] = ['#23201c', '#5f574d', '#cfc6b6', '#0b5a63'];

/** An order as a supplier gets it, on A4, in the supplier's language. */
export function printOrder(paper: OrderPaper): Promise<Buffer> {
  const { order, practiceName, printedAt } = paper;
  const words = orderWords(order.supplier.language);
  const pdf = new PDFDocument({
    ...{ size: 'A4', margin: LEFT, lang: order.supplier.language, displayTitle: true },
    bufferPages: true,
    info: {
      Title: words.title(order.number),
      ...{ Author: printable(practiceName), CreationDate: printedAt },
    },
  });
  const chunks: Buffer[] = [];
  const done = new Promise<Buffer>((resolve, reject) => {
    pdf.on('data', (chunk: Buffer) => chunks.push(chunk));
    pdf.on('end', () => resolve(Buffer.concat(chunks)));
    pdf.on('error', reject);
  });
  const sheet = { pdf, words, paper };
  heading(sheet);
  table(sheet);
  closing(sheet);
  footers(sheet);
  pdf.end();
  return done;
}

function heading({ pdf, words, paper }: Sheet): void {
  const { order, practiceName, deliverTo } = paper;
  const { language } = order.supplier;
  pdf.font('Helvetica').fontSize(10).fillColor(QUIET).text(printable(practiceName), LEFT, LEFT);
  pdf.moveDown(0.6).font('Helvetica-Bold').fontSize(22).fillColor(INK);
  pdf.text(words.title(order.number));
  if (order.orderedOn === null) {
    pdf.font('Helvetica').fontSize(10).fillColor(ACCENT).text(words.draft);
  }
  pdf.moveDown(0.5);
  rule(pdf, ACCENT, 1.5);
  pdf.y += 12;
  const facts: (readonly [string, string | null])[] = [
    [words.supplier, order.supplier.name],
    [words.customerNumber, order.supplier.customerNumber],
    [words.reference, order.reference],
    [words.date, order.orderedOn === null ? null : dayText(order.orderedOn, language)],
    [words.wantedBy, order.expectedOn === null ? null : dayText(order.expectedOn, language)],
    [words.deliverTo, deliverTo === null ? null : `${practiceName}, ${deliverTo}`],
    [words.amountsIn, order.currency],
  ];
  for (const [label, value] of facts) {
    if (value === null) continue;
    const top = pdf.y;
    pdf.font('Helvetica').fontSize(9.5).fillColor(QUIET).text(label, LEFT, top, { width: 118 });
    pdf.fillColor(INK).text(printable(value), LEFT + 126, top, { width: WIDTH - 126 });
    pdf.x = LEFT;
    pdf.y += 3;
  }
  pdf.y += 16;
}

function tableHead({ pdf, words }: Sheet): void {
  pdf.font('Helvetica').fontSize(8.5).fillColor(QUIET);
  row(pdf, [...words.columns]);
  rule(pdf, QUIET, 0.7);
}

function table(sheet: Sheet): void {
  const { pdf, paper } = sheet;
  tableHead(sheet);
  for (const line of paper.order.lines) {
    const below = belowOf(sheet, line);
    if (pdf.y + lineHeight(pdf, goodsName(line), below) > BOTTOM) {
      pdf.addPage();
      tableHead(sheet);
    }
    pdf.font('Helvetica').fontSize(9.5).fillColor(INK);
    pdf.y += 5;
    row(pdf, [
      ...[String(line.lineNumber), line.presentation.articleCode ?? '', goodsName(line)],
      ...[String(line.packs), shown(sheet, line.packPrice), shown(sheet, line.total)],
    ]);
    pdf.fontSize(8.5).fillColor(QUIET);
    pdf.text(printable(below), ENDS[1] + 6, pdf.y - 3, { width: widthOf(2) });
    pdf.x = LEFT;
    pdf.y += 3;
    rule(pdf, LINE, 0.5);
  }
}

/** A line is not torn apart by the end of a page. */
function lineHeight(pdf: Pdf, goods: string, below: string): number {
  const high = (text: string, size: number) =>
    pdf
      .font('Helvetica')
      .fontSize(size)
      .heightOfString(printable(text), { width: widthOf(2) });
  return high(goods, 9.5) + high(below, 8.5) + 16;
}

function belowOf({ words }: Sheet, { presentation }: OrderLineDto): string {
  const { name, deviceIdentifier } = presentation;
  return deviceIdentifier === null ? name : `${name} (${words.label} ${deviceIdentifier})`;
}

function shown({ paper: { order } }: Sheet, amount: string | null): string {
  if (amount === null) return '–';
  return amountText(amount, currencyDigits(order.currency), order.supplier.language);
}

function closing(sheet: Sheet): void {
  const { pdf, words, paper } = sheet;
  const { order } = paper;
  if (pdf.y + 150 > BOTTOM) pdf.addPage();
  pdf.y += 8;
  for (const [label, amount] of [
    [words.goods, order.goods],
    [words.freight, order.freight],
    [words.total, order.total],
  ] as const) {
    const isTotal = label === words.total;
    pdf.font(isTotal ? 'Helvetica-Bold' : 'Helvetica').fontSize(isTotal ? 11 : 9.5);
    const top = pdf.y;
    pdf.fillColor(isTotal ? INK : QUIET).text(label, ENDS[2] + 6, top, { width: 70 });
    pdf.fillColor(INK);
    pdf.text(shown(sheet, amount), RIGHT - 100, top, { width: 100, align: 'right' });
    pdf.y += 3;
  }
  pdf.font('Helvetica').fontSize(9).fillColor(QUIET);
  pdf.y += 10;
  if (order.unpriced > 0) pdf.text(words.unpriced, LEFT, pdf.y, { width: WIDTH });
  pdf.text(words.expected, LEFT, pdf.y, { width: WIDTH });
  if (order.note === null) return;
  pdf.moveDown(0.8).font('Helvetica-Bold').fontSize(9.5).fillColor(INK).text(words.note, LEFT);
  pdf.font('Helvetica').text(printable(order.note), LEFT, pdf.y + 2, { width: WIDTH });
}

function row(pdf: Pdf, cells: readonly string[]): void {
  const printed = cells.map(printable);
  const heights = printed.map((text, i) => pdf.heightOfString(text, { width: widthOf(i) }));
  const top = pdf.y;
  printed.forEach((text, i) => {
    const width = widthOf(i);
    const left = (ENDS[i] ?? RIGHT) - width;
    pdf.text(text, left, top, { width, align: i < 3 ? 'left' : 'right' });
  });
  pdf.x = LEFT;
  pdf.y = top + Math.max(...heights) + 4;
}

function widthOf(column: number): number {
  const end = ENDS[column] ?? RIGHT;
  return column === 0 ? end - LEFT : end - (ENDS[column - 1] ?? LEFT) - 6;
}

function rule(pdf: Pdf, color: string | undefined, thickness: number): void {
  pdf
    .moveTo(LEFT, pdf.y)
    .lineTo(RIGHT, pdf.y)
    .lineWidth(thickness)
    .strokeColor(color ?? '')
    .stroke();
}

/** On every page which order it is and whose, for a page that went astray. */
function footers({ pdf, words, paper }: Sheet): void {
  const { start, count } = pdf.bufferedPageRange();
  for (let page = 0; page < count; page += 1) {
    pdf.switchToPage(start + page);
    // Below the margin, where text would otherwise start another page.
    pdf.page.margins.bottom = 0;
    const whose = `${words.title(paper.order.number)}, ${printable(paper.practiceName)}`;
    pdf.font('Helvetica').fontSize(8).fillColor(QUIET);
    pdf.text(whose, LEFT, FOOT, { lineBreak: false });
    pdf.text(words.page(page + 1, count), LEFT, FOOT, { width: WIDTH, align: 'right' });
  }
}
