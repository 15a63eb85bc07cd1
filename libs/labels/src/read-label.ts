import { isEnvelope, openEnvelope } from './envelope.js';
import { readBracketed } from './gs1/bracketed.js';
import { firstForeign, shown } from './gs1/character-sets.js';
import { isLink, type LinkOptions, readDigitalLink } from './gs1/digital-link.js';
import { SEPARATOR } from './gs1/element-string.js';
import { looksLikeGtin, readGtin } from './gs1/gtin.js';
import { findIdentifier } from './gs1/identifiers.js';
import { gs1Label } from './gs1/label.js';
import { relationProblem } from './gs1/relations.js';
import { type Carrier, dataStart, readScan, type Scan, symbologyOf } from './gs1/scan.js';
import { readSeparated, spelledSeparator } from './gs1/separators.js';
import type { Element } from './gs1/values.js';
import { hibcLabel } from './hibc/label.js';
import { type HibcSymbol, linkProblem, readHibc } from './hibc/read.js';
import { mergeProduction, noProduction } from './hibc/secondary.js';
import { splitHibc } from './hibc/split.js';
import type { Label, LabelForm, LabelNote } from './label.js';
import { type Failed, failed, type Result, shifted } from './problem.js';

export interface ReadOptions extends LinkOptions {
  /** Two-digit years are read by it; nothing here looks at a clock. */
  readonly currentYear: number;
}

export type ReadLabel = Result<{ readonly label: Label }>;

/** Longer than any label: what is longer was not scanned from one. */
export const LONGEST_LABEL = 2000;

type Symbol_ =
  | {
      readonly standard: 'HIBC';
      readonly carrier: Carrier | null;
      readonly hibc: HibcSymbol;
      /** As it was given, without anything around it. */
      readonly text: string;
      /** Where the character before the last stands, which is the link of a secondary symbol. */
      readonly linkAt: number;
    }
  | {
      readonly standard: 'GS1';
      readonly carrier: Carrier | null;
      readonly form: LabelForm;
      readonly elements: readonly Element[];
      readonly notes: readonly LabelNote[];
    };

type HibcSymbol_ = Extract<Symbol_, { standard: 'HIBC' }>;

type ReadSymbol = Result<{ readonly symbol: Symbol_ }>;

/**
 * Reads a label of a medical supply: GS1 in every form, HIBC supplier labels, plain GTINs. Several
 * symbols of one label stand in lines of their own. Whatever comes in, it never throws.
 */
export function readLabel(text: string, options: ReadOptions): ReadLabel {
  if (text.length > LONGEST_LABEL) {
    const sentence = `No label is longer than ${LONGEST_LABEL} characters.`;
    return failed('too_long', LONGEST_LABEL, sentence);
  }
  const symbols: Symbol_[] = [];
  for (const { line, at } of lines(text)) {
    const read = readSymbol(line, options);
    if (read.ok) {
      symbols.push(placed(read.symbol, at));
      continue;
    }
    const parts = splitHibc(line, options.currentYear);
    if (!parts) return shifted(read, at);
    symbols.push(...parts.map((part) => placed(hibc(part, null), at + part.at)));
  }
  const [first] = symbols;
  if (!first) return failed('empty_value', 0, 'There is nothing to read.');
  return joined(symbols, first, options.currentYear);
}

/** A scanner ends what it sends by Enter or Tab; no label holds either. */
function lines(text: string): { readonly line: string; readonly at: number }[] {
  return [...text.matchAll(/[^\r\n\t]+/g)].map(({ 0: line, index }) => ({ line, at: index }));
}

function placed(symbol: Symbol_, by: number): Symbol_ {
  if (by === 0) return symbol;
  if (symbol.standard === 'HIBC') return { ...symbol, linkAt: symbol.linkAt + by };
  return { ...symbol, elements: symbol.elements.map((one) => ({ ...one, at: one.at + by })) };
}

function joined(symbols: readonly Symbol_[], first: Symbol_, currentYear: number): ReadLabel {
  if (first.standard === 'HIBC') return joinedHibc(symbols, first, currentYear);
  const elements: Element[] = [];
  const notes = new Set<LabelNote>();
  for (const symbol of symbols) {
    if (symbol.standard !== 'GS1') return mixed();
    elements.push(...symbol.elements);
    for (const note of symbol.notes) notes.add(note);
  }
  const wrong = relationProblem(elements, ['exclusive', 'repeats']);
  if (wrong) return wrong;
  const one = symbols.length === 1;
  const facts = { form: one ? first.form : 'symbols', carrier: first.carrier } as const;
  return { ok: true, label: gs1Label(elements, currentYear, { ...facts, notes: [...notes] }) };
}

function joinedHibc(
  symbols: readonly Symbol_[],
  first: HibcSymbol_,
  currentYear: number,
): ReadLabel {
  const all = symbols.flatMap((symbol) => (symbol.standard === 'HIBC' ? [symbol] : []));
  if (all.length < symbols.length) return mixed();
  if (all.length === 1) return { ok: true, label: hibcLabel(first.hibc, first.carrier) };
  const product = all.find(({ hibc }) => hibc.structure === 'primary');
  const production = noProduction();
  for (const other of all) {
    if (other === product) continue;
    const second = secondary(other, currentYear);
    if (!product || !second) {
      const sentence = 'Two symbols of a label are one with the product and one with the lot.';
      return failed('malformed', 0, sentence);
    }
    const wrong =
      linkProblem(product.hibc, second) ?? mergeProduction(production, second.production ?? {});
    if (wrong) return shifted(wrong, other.linkAt);
  }
  const whole = { ...first.hibc, ...product?.hibc, production };
  return { ok: true, label: { ...hibcLabel(whole, first.carrier), form: 'symbols' } };
}

/** What stands behind a product: "+S" and "+Q" name a serial number and a quantity there. */
function secondary({ hibc, text }: HibcSymbol_, currentYear: number): HibcSymbol | undefined {
  if (hibc.structure === 'secondary') return hibc;
  const read = readHibc(text, currentYear, { supplement: true });
  return read.ok && read.symbol.structure === 'secondary' ? read.symbol : undefined;
}

function mixed(): Failed {
  const sentence = 'One symbol is GS1 and another HIBC; they are read one at a time.';
  return failed('mixed_standards', 0, sentence);
}

function readSymbol(given: string, options: ReadOptions): ReadSymbol {
  const text = given.trimStart();
  if (!text.startsWith(']')) return readPayload(given, null, options);
  return behind(readMarked(text, options), given.length - text.length);
}

/** What was read behind so many characters that do not belong to it. */
function behind(read: ReadSymbol, by: number): ReadSymbol {
  return read.ok ? { ok: true, symbol: placed(read.symbol, by) } : shifted(read, by);
}

function readMarked(text: string, options: ReadOptions): ReadSymbol {
  const symbology = symbologyOf(text, { anyCarrier: true });
  if (symbology?.holds === 'elements') {
    // The identifier stands for the first FNC1; some scanners send that as well.
    const start = dataStart(text, symbology);
    if (text.charAt(start) === SEPARATOR) {
      const read = readMarkedOnce(text.slice(0, start) + text.slice(start + 1), options);
      return read.ok ? behind(read, 1) : shifted(read, 1);
    }
  }
  return readMarkedOnce(text, options);
}

function readMarkedOnce(text: string, options: ReadOptions): ReadSymbol {
  const { currentYear } = options;
  const scan = readScan(text, { currentYear, rules: [], anyCarrier: true });
  if (!scan.ok) return restoredScan(text, scan, currentYear);
  if (scan.content === 'element-string' && spelledSeparator(text) >= 0) {
    return spelledScan(text, scan, currentYear);
  }
  const { carrier, payloadAt } = scan;
  if (scan.content === 'plain') return behind(readPayload(scan.text, carrier, options), payloadAt);
  return gs1(scan.content, moved(scan.elements, payloadAt), carrier);
}

/** Such a text can be read as it stands, but hides what is behind the separator. */
function spelledScan(text: string, { carrier, payloadAt }: Scan, currentYear: number): ReadSymbol {
  const read = readElements(text.slice(payloadAt), carrier, currentYear);
  return behind(read, payloadAt);
}

/** A scanner that names its symbols may still write separators out. */
function restoredScan(text: string, problem: Failed, currentYear: number): ReadSymbol {
  const symbology = symbologyOf(text, { anyCarrier: true });
  if (symbology?.holds !== 'elements') return problem;
  const start = dataStart(text, symbology);
  const read = readSeparated(text.slice(start), currentYear, { writtenOutOnly: true });
  if (!read.ok || read.separator === null) return problem;
  return gs1('element-string', moved(read.elements, start), symbology.carrier, [
    'separator_replaced',
  ]);
}

function moved(elements: readonly Element[], by: number): Element[] {
  return elements.map((element) => ({ ...element, at: element.at + by }));
}

function gs1(
  form: LabelForm,
  elements: readonly Element[],
  carrier: Carrier | null,
  notes: readonly LabelNote[] = [],
): ReadSymbol {
  return { ok: true, symbol: { standard: 'GS1', form, elements, carrier, notes } };
}

function readPayload(given: string, carrier: Carrier | null, options: ReadOptions): ReadSymbol {
  const { currentYear } = options;
  // No label begins with a blank and no form of GS1 ends with one; HIBC may end with one.
  const started = given.trimStart();
  const lead = given.length - started.length;
  if (started.startsWith('+') || started.startsWith('*+')) {
    const text = started.trimEnd();
    const whole = readHibc(started, currentYear);
    // The space may be the check character; only where it is not, it does not belong to the label.
    const read = whole.ok || text === started ? whole : readHibc(text, currentYear);
    if (!read.ok) return shifted(whole.ok ? read : whole, lead);
    const part = { text: read === whole ? started : text, symbol: read.symbol };
    return { ok: true, symbol: placed(hibc(part, carrier), lead) };
  }
  const text = started.trimEnd();
  const read = readGs1(text, carrier, options);
  return read.ok ? read : shifted(read, lead);
}

function readGs1(text: string, carrier: Carrier | null, options: ReadOptions): ReadSymbol {
  const { currentYear } = options;
  if (isLink(text)) {
    const read = readDigitalLink(text, currentYear, options);
    return read.ok ? gs1('digital-link', read.elements, carrier) : read;
  }
  if (text.startsWith('(')) {
    const read = readBracketed(text, currentYear, { blanks: true });
    return read.ok ? gs1('bracketed', read.elements, carrier) : read;
  }
  if (looksLikeGtin(text)) return plainGtin(text, carrier);
  if (isEnvelope(text)) {
    const message = openEnvelope(text);
    if (!message.ok) return message;
    return behind(readElements(message.data, carrier, currentYear), message.at);
  }
  const lead = text.startsWith(SEPARATOR) ? 1 : 0;
  const data = text.slice(lead);
  const other = notGs1(data);
  if (other) return other;
  return behind(readElements(data, carrier, currentYear), lead);
}

function readElements(data: string, carrier: Carrier | null, currentYear: number): ReadSymbol {
  const read = readSeparated(data, currentYear);
  if (!read.ok) return read;
  const notes: LabelNote[] = read.separator === null ? [] : ['separator_replaced'];
  return gs1('element-string', read.elements, carrier, notes);
}

function hibc(
  { text, symbol }: { readonly text: string; readonly symbol: HibcSymbol },
  carrier: Carrier | null,
): HibcSymbol_ {
  return { standard: 'HIBC', carrier, hibc: symbol, text, linkAt: text.length - 2 };
}

function plainGtin(text: string, carrier: Carrier | null): ReadSymbol {
  const read = readGtin(text);
  if (!read.ok) return read;
  const identifier = findIdentifier('01');
  if (!identifier) throw new Error('The table of identifiers has no (01)');
  return gs1('gtin', [{ identifier, value: read.gtin14, at: 0 }], carrier);
}

/** Other standards by their first character, and what is no label at all. */
function notGs1(text: string): Failed | undefined {
  if (text.startsWith('=') || text.startsWith('&')) {
    const sentence = 'This is an ISBT 128 label for products of human origin; it is not read here.';
    return failed('unsupported_standard', 0, sentence);
  }
  if (text === '') return failed('empty_value', 0, 'There is nothing to read.');
  if (firstForeign(text.slice(0, 2), 'N') < 0 && text.length > 1) return undefined;
  const sentence =
    `No label begins with ${shown(text.charAt(0))}: GS1 begins with digits, a bracket or a link, ` +
    'HIBC with "+".';
  return failed('not_a_label', 0, sentence);
}
