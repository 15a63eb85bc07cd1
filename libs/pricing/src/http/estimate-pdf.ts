import PDFDocument from 'pdfkit';
import { formatMoney, type Money, money, sum } from '#lib/measure';
import { currencyDigits } from '#lib/platform';
import { dayText, ESTIMATE_WORDS, printable } from './estimate-words.js';
import type { Language } from './quote.dto.js';
import type { QuoteDto, QuotedLineDto, QuotedWayDto } from './quote-answer.dto.js';

export interface Estimate {
  readonly practiceName: string;
  readonly quote: QuoteDto;
  readonly way: QuotedWayDto;
  readonly language: Language;
  readonly printedAt: Date;
}

type Words = (typeof ESTIMATE_WORDS)[Language];
type Pdf = InstanceType<typeof PDFDocument>;

const LEFT = 56;
const RIGHT = 539;
const BOTTOM = 760;
/** Where each column ends, right-aligned; the first is as wide as the rest leaves. */
const ENDS = [265, 325, 385, 462, RIGHT] as const;

/** The estimate that a patient takes home: one page for most, the two kinds of work kept apart. */
export function printEstimate(estimate: Estimate): Promise<Buffer> {
  const { language, practiceName, printedAt } = estimate;
  const words = ESTIMATE_WORDS[language];
  const pdf = new PDFDocument({
    size: 'A4',
    margin: LEFT,
    lang: language,
    displayTitle: true,
    info: { Title: words.title, Author: printable(practiceName), CreationDate: printedAt },
  });
  const chunks: Buffer[] = [];
  const done = new Promise<Buffer>((resolve, reject) => {
    pdf.on('data', (chunk: Buffer) => chunks.push(chunk));
    pdf.on('end', () => resolve(Buffer.concat(chunks)));
    pdf.on('error', reject);
  });
  heading(pdf, estimate, words);
  groups(pdf, estimate, words);
  closing(pdf, words);
  pdf.end();
  return done;
}

function heading(pdf: Pdf, { practiceName, quote, language }: Estimate, words: Words): void {
  pdf.font('Helvetica').fontSize(11).text(printable(practiceName));
  pdf.moveDown(1).font('Helvetica-Bold').fontSize(20).text(words.title);
  pdf.moveDown(0.5).font('Helvetica').fontSize(10);
  pdf.text(`${words.chart}: ${printable(quote.chartReference ?? '')}`);
  pdf.text(`${words.date}: ${dayText(quote.quotedOn, language)}`);
  const { plan } = quote;
  if (!plan) {
    pdf.text(`${words.noPlan} ${words.amounts(quote.currency)}`);
    return;
  }
  const show = shower(quote.currency, language);
  pdf.text(`${words.plan}: ${printable(plan.name)}`);
  const maximum = plan.maximumLeft === null ? null : show(money(plan.maximumLeft));
  const left = words.left(show(money(plan.deductibleLeft)), maximum);
  const asOf = words.asOf(dayText(plan.leftAsOf ?? quote.quotedOn, language));
  pdf.text(`${left} ${asOf}`);
  pdf.text(words.amounts(quote.currency));
}

function groups(pdf: Pdf, estimate: Estimate, words: Words): void {
  const { way, quote } = estimate;
  const isCosmetic = (line: QuotedLineDto) =>
    quote.restorations[line.restoration]?.reason === 'cosmetic';
  const parts = [
    ['insured', way.lines.filter((line) => !isCosmetic(line))],
    ['cosmetic', way.lines.filter(isCosmetic)],
  ] as const;
  for (const [kind, lines] of parts) {
    if (lines.length === 0) continue;
    makeRoom(pdf, 90);
    pdf.moveDown(1.5).font('Helvetica-Bold').fontSize(12).text(words.groups[kind], LEFT);
    pdf.moveDown(0.5).fontSize(9);
    row(pdf, words.columns);
    pdf.font('Helvetica').fontSize(9);
    for (const line of lines) row(pdf, [work(line, estimate, words), ...amounts([line], estimate)]);
    pdf.font('Helvetica-Bold');
    row(pdf, [words.sum, ...amounts(lines, estimate)]);
  }
  pdf.moveDown(1).fontSize(10);
  row(pdf, [words.total, ...amounts(way.lines, estimate)]);
}

function work(line: QuotedLineDto, { quote, way }: Estimate, words: Words): string {
  const made = quote.restorations[line.restoration];
  if (!made) throw new Error('An estimate names a restoration that the quote lacks');
  const reason = words.reasons[made.reason as keyof Words['reasons']];
  const code = made.feeCode ? `${made.feeCode} ` : '';
  const parts = [
    `${words.tooth} ${made.tooth} ${made.surfaces}`,
    `${code}${made.template.name}`,
    reason,
  ];
  if (way.visits.length > 1) parts.push(words.visit(line.visit + 1));
  if (quote.plan && !line.covered && made.reason !== 'cosmetic') parts.push(words.notCovered);
  return printable(parts.join(', '));
}

function amounts(lines: readonly QuotedLineDto[], { quote, language }: Estimate): string[] {
  const show = shower(quote.currency, language);
  return (['fee', 'writeOff', 'planPays', 'patientPays'] as const).map((field) =>
    show(sum(lines.map((line) => money(line[field])))),
  );
}

function shower(currency: string, language: Language): (amount: Money) => string {
  return (amount) => {
    const digits = formatMoney(amount, currencyDigits(currency));
    return language === 'de' ? digits.replace('.', ',') : digits;
  };
}

function row(pdf: Pdf, cells: readonly string[]): void {
  const heights = cells.map((cell, i) => pdf.heightOfString(cell, { width: widthOf(i) }));
  const height = Math.max(...heights);
  makeRoom(pdf, height);
  const top = pdf.y;
  cells.forEach((cell, i) => {
    const width = widthOf(i);
    const end = ENDS[i] ?? RIGHT;
    pdf.text(cell, end - width, top, { width, align: i === 0 ? 'left' : 'right' });
  });
  pdf.x = LEFT;
  pdf.y = top + height + 4;
}

function widthOf(column: number): number {
  const end = ENDS[column] ?? RIGHT;
  return column === 0 ? end - LEFT : end - (ENDS[column - 1] ?? LEFT) - 6;
}

function makeRoom(pdf: Pdf, height: number): void {
  if (pdf.y + height > BOTTOM) pdf.addPage();
}

function closing(pdf: Pdf, words: Words): void {
  makeRoom(pdf, 130);
  pdf.moveDown(2).font('Helvetica').fontSize(10);
  pdf.text(words.caution, LEFT, pdf.y, { width: RIGHT - LEFT });
  pdf.moveDown(0.5).text(words.changes);
  pdf.moveDown(4).moveTo(LEFT, pdf.y).lineTo(300, pdf.y).stroke();
  pdf.moveDown(0.3).fontSize(9).text(words.signature);
}
