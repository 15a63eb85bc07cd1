import { type SaxesAttributePlain, SaxesParser } from 'saxes';
import { LIMITS, UnreadableFile } from '../domain/sheet.js';
import type { ZipParts } from './zip.js';

export type Attributes = Readonly<Record<string, string>>;

interface Handler {
  readonly open?: (name: string, attributes: Attributes) => void;
  readonly text?: (text: string) => void;
  readonly close?: (name: string) => void;
}

/** A name without the prefix of its namespace: some programs write "x:row" for "row". */
function local(name: string): string {
  return name.slice(name.indexOf(':') + 1);
}

/**
 * Reads one XML part piece by piece. Declared entities are not expanded (the parser knows none), so
 * that no part can grow while it is read.
 */
export async function parsePart(zip: ZipParts, name: string, handler: Handler): Promise<void> {
  const parser = new SaxesParser();
  parser.on('error', (error) => {
    throw new UnreadableFile(`The part ${name} of the workbook is damaged: ${error.message}`);
  });
  parser.on('opentag', (tag) => {
    handler.open?.(local(tag.name), tag.attributes as Record<string, SaxesAttributePlain & string>);
  });
  parser.on('text', (text) => handler.text?.(text));
  parser.on('cdata', (text) => handler.text?.(text));
  parser.on('closetag', (tag) => handler.close?.(local(tag.name)));
  for await (const piece of zip.text(name)) parser.write(piece);
  parser.close();
}

export interface SheetPart {
  readonly name: string;
  readonly part: string;
}

export interface Contents {
  readonly sheets: readonly SheetPart[];
  readonly date1904: boolean;
  /** For each cell style, whether it shows a number as a date. */
  readonly dateStyles: readonly boolean[];
  readonly sharedTexts: readonly string[];
}

/** What a workbook says about itself: its visible sheets, its styles, and the texts it shares. */
export async function readContents(zip: ZipParts): Promise<Contents> {
  if (!zip.has('xl/workbook.xml')) {
    throw new UnreadableFile('This is not a workbook (.xlsx). Send CSV or XLSX.');
  }
  const targets = await readTargets(zip);
  const sheets: SheetPart[] = [];
  let date1904 = false;
  await parsePart(zip, 'xl/workbook.xml', {
    open: (name, attributes) => {
      if (name === 'workbookPr') date1904 = /^(1|true)$/.test(attributes.date1904 ?? '');
      if (name !== 'sheet' || (attributes.state ?? 'visible') !== 'visible') return;
      const part = targets.get(attributes['r:id'] ?? '');
      if (part) sheets.push({ name: attributes.name ?? '', part });
    },
  });
  return {
    sheets,
    date1904,
    dateStyles: await readDateStyles(zip),
    sharedTexts: await readSharedTexts(zip),
  };
}

async function readTargets(zip: ZipParts): Promise<Map<string, string>> {
  const targets = new Map<string, string>();
  await parsePart(zip, 'xl/_rels/workbook.xml.rels', {
    open: (name, attributes) => {
      const { Id: id, Target: target } = attributes;
      if (name !== 'Relationship' || !id || !target) return;
      targets.set(id, target.startsWith('/') ? target.slice(1) : `xl/${target}`);
    },
  });
  return targets;
}

/** Number formats that are dates without being written out (ECMA-376 part 1, 18.8.30). */
function isBuiltInDate(id: number): boolean {
  return (
    (id >= 14 && id <= 22) ||
    (id >= 27 && id <= 36) ||
    (id >= 45 && id <= 47) ||
    (id >= 50 && id <= 58)
  );
}

/** Whether a written format shows a date: it has d, m, y or h outside quotes and brackets. */
export function isDateFormat(code: string): boolean {
  const plain = code
    .replace(/"[^"]*"/g, '')
    .replace(/\\./g, '')
    .replace(/\[[^\]]*\]/g, '');
  return /[dmyh]/i.test(plain.replace(/general/gi, ''));
}

async function readDateStyles(zip: ZipParts): Promise<boolean[]> {
  const styles: boolean[] = [];
  if (!zip.has('xl/styles.xml')) return styles;
  const written = new Map<number, string>();
  let inCells = false;
  await parsePart(zip, 'xl/styles.xml', {
    open: (name, attributes) => {
      if (name === 'numFmt') written.set(Number(attributes.numFmtId), attributes.formatCode ?? '');
      if (name === 'cellXfs') inCells = true;
      if (name !== 'xf' || !inCells) return;
      const id = Number(attributes.numFmtId ?? '0');
      const code = written.get(id);
      styles.push(code === undefined ? isBuiltInDate(id) : isDateFormat(code));
    },
    close: (name) => {
      if (name === 'cellXfs') inCells = false;
    },
  });
  return styles;
}

const MOST_SHARED = 400_000;

async function readSharedTexts(zip: ZipParts): Promise<string[]> {
  const texts: string[] = [];
  if (!zip.has('xl/sharedStrings.xml')) return texts;
  let current = '';
  const inside = { t: false, phonetic: false };
  await parsePart(zip, 'xl/sharedStrings.xml', {
    open: (name) => {
      if (name === 'si') current = '';
      if (name === 't') inside.t = true;
      if (name === 'rPh') inside.phonetic = true;
    },
    text: (text) => {
      // One character more than is allowed is enough to know that it is too long.
      if (!inside.t || inside.phonetic || current.length > LIMITS.cellCharacters) return;
      current += text.slice(0, LIMITS.cellCharacters + 1);
    },
    close: (name) => {
      if (name === 't') inside.t = false;
      if (name === 'rPh') inside.phonetic = false;
      if (name !== 'si') return;
      if (texts.length >= MOST_SHARED) {
        throw new UnreadableFile(
          'The workbook holds more different texts than any list of a practice.',
        );
      }
      texts.push(current);
    },
  });
  return texts;
}
