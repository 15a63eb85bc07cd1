import PDFDocument from 'pdfkit';
import { type OwnSubject, readGtin, type WrittenSymbol, writeOwnSymbol } from '#lib/labels';
import type { OwnLabel } from '../db/label-own.js';
import { type LabelPlace, labelPlace, MARGIN } from './label-grid.js';
import type { SheetLanguage } from './label-sheet.dto.js';
import { dataMatrix, type SymbolMatrix } from './label-symbol.js';
import { LABEL_WORDS, labelDay, latin } from './label-words.js';

export interface LabelSheet {
  readonly practiceName: string;
  readonly labels: readonly OwnLabel[];
  /** Where on the first sheet the first label goes, from 1. */
  readonly start: number;
  readonly language: SheetLanguage;
  readonly printedAt: Date;
  /** Only a test that looks into the file wants it readable. */
  readonly compress?: boolean;
}

type Pdf = InstanceType<typeof PDFDocument>;

const A4: [number, number] = [595.276, 841.89];
const SYMBOL = 54; // points: 19 mm, so that a module of the largest symbol here is 0.6 mm
const QUIET_MODULES = 2; // ISO/IEC 16022 wants at least one module of white on each side
const INK = '#000000'; // as dark as it gets, for the scanner
const QUIET = '#4a4a4a';

/** Labels of the practice's own on A4 sheets, each with a GS1 DataMatrix and what it says in words. */
export async function printLabelSheet(sheet: LabelSheet): Promise<Buffer> {
  const { language, practiceName, printedAt, labels, start } = sheet;
  const pdf = new PDFDocument({
    size: A4,
    margin: 0,
    lang: language,
    displayTitle: true,
    compress: sheet.compress ?? true,
    info: {
      Title: LABEL_WORDS[language].title,
      Author: latin(practiceName),
      CreationDate: printedAt,
    },
  });
  const chunks: Buffer[] = [];
  const done = new Promise<Buffer>((resolve, reject) => {
    pdf.on('data', (chunk: Buffer) => chunks.push(chunk));
    pdf.on('end', () => resolve(Buffer.concat(chunks)));
    pdf.on('error', reject);
  });
  let page = 0;
  for (const [index, label] of labels.entries()) {
    const place = labelPlace(index, start);
    if (place.page > page) pdf.addPage();
    page = place.page;
    const symbol = symbolOf(label);
    drawSymbol(pdf, await dataMatrix(symbol.elementString), place);
    writeWords(pdf, wordsOf(label, language), place);
  }
  pdf.end();
  return done;
}

/**
 * A GTIN numbers a pack, so it may stand on the pack only: on the shelf's label of a lot, and on an
 * opened container if it was alone in its pack. Elsewhere the symbol says which container it is.
 */
export function symbolOf(label: OwnLabel): WrittenSymbol {
  const { deviceIdentifier, lotNumber, expiresOn, containersPerPack } = label;
  const alone = label.kind === 'lot' || containersPerPack === 1;
  const read = readGtin(deviceIdentifier ?? '');
  const gtin14 = read.ok && alone ? read.gtin14 : null;
  return writeOwnSymbol({ ...subjectOf(label), gtin14, lot: lotNumber, expiry: expiresOn });
}

function subjectOf(label: OwnLabel): OwnSubject {
  const ids = { location: label.locationId, lot: label.lotId, container: label.holdingId };
  const id = ids[label.kind];
  if (id === null) throw new Error(`A label of a ${label.kind} without its id`);
  return { kind: label.kind, id };
}

function drawSymbol(pdf: Pdf, matrix: SymbolMatrix, { left, top, height }: LabelPlace): void {
  const module = SYMBOL / (matrix.columns + 2 * QUIET_MODULES);
  const x = left + MARGIN + QUIET_MODULES * module;
  const y = top + (height - SYMBOL) / 2 + QUIET_MODULES * module;
  for (let row = 0; row < matrix.rows; row += 1) {
    let column = 0;
    while (column < matrix.columns) {
      const from = column;
      while (column < matrix.columns && matrix.isDark(column, row)) column += 1;
      // One rectangle for each run of dark modules: no hairlines of white between them.
      if (column > from)
        pdf.rect(x + from * module, y + row * module, (column - from) * module, module);
      column += 1;
    }
  }
  pdf.fill(INK);
}

interface Words {
  readonly above: string;
  readonly main: string;
  readonly strong: string | null;
  readonly rest: readonly string[];
}

function wordsOf(label: OwnLabel, language: SheetLanguage): Words {
  const words = LABEL_WORDS[language];
  const above = words.kinds[label.kind];
  if (label.kind === 'location') {
    return { above, main: label.locationName ?? '', strong: null, rest: [] };
  }
  const day = (iso: string) => labelDay(iso, language);
  const main = [label.consumableName, label.variant].filter((part) => part !== null).join(', ');
  const lot = label.lotNumber === null ? words.noLot : words.lot(label.lotNumber);
  if (label.kind === 'lot') {
    const strong = label.expiresOn === null ? null : words.expires(day(label.expiresOn));
    return { above, main, strong, rest: [lot] };
  }
  const strong = label.useBy === null ? null : words.lastDay(day(label.useBy));
  const opened = label.openedOn === null ? [] : [words.opened(day(label.openedOn))];
  return { above, main, strong, rest: [...opened, lot] };
}

function writeWords(pdf: Pdf, words: Words, { left, top, width, height }: LabelPlace): void {
  const x = left + MARGIN + SYMBOL + 6;
  const room = left + width - MARGIN - x;
  const bottom = top + height - MARGIN;
  let y = top + MARGIN + 4;
  const write = (text: string, font: string, size: number, color: string, lines: number) => {
    pdf.font(font).fontSize(size).fillColor(color);
    const line = pdf.currentLineHeight(true);
    const most = Math.min(lines * line, bottom - y);
    if (most < line - 0.5) return;
    const options = { width: room, height: most, ellipsis: true };
    const shown = latin(text);
    pdf.text(shown, x, y, options);
    y += Math.min(pdf.heightOfString(shown, options), most) + 1.5;
  };
  write(words.above, 'Helvetica', 6.5, QUIET, 1);
  write(words.main, 'Helvetica-Bold', 9, INK, 2);
  if (words.strong !== null) write(words.strong, 'Helvetica-Bold', 8.5, INK, 2);
  for (const line of words.rest) write(line, 'Helvetica', 8, INK, 1);
}
