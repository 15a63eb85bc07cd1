import { type Failed, failed, type Result, shifted } from '../problem.js';
import { firstForeign } from './character-sets.js';
import { wrongCheckDigit } from './check-digits.js';
import { isLinkOfOneCase, readDigitalLink } from './digital-link.js';
import { readElementString } from './element-string.js';
import { findIdentifier } from './identifiers.js';
import { RELATION_RULES, type RelationRule, relationProblem } from './relations.js';
import type { Element } from './values.js';

export type Carrier =
  | 'Aztec'
  | 'Code 128'
  | 'Code 39'
  | 'DataBar'
  | 'DataMatrix'
  | 'DotCode'
  | 'EAN/UPC'
  | 'GS1-128'
  | 'ITF-14'
  | 'PDF417'
  | 'QR';

export interface Symbology {
  readonly carrier: Carrier;
  /** GS1 element strings, the digits of a GTIN, or whatever somebody put in. */
  readonly holds: 'elements' | 'plain' | { readonly digits: number };
  /** The number of the character set stands in front of the data, as in \000026. */
  readonly characterSet?: true;
}

/** ISO/IEC 15424 symbology identifiers, as far as labels of supplies carry them. */
const SYMBOLOGIES: ReadonlyMap<string, Symbology> = new Map<string, Symbology>([
  ['C1', { carrier: 'GS1-128', holds: 'elements' }],
  ['d2', { carrier: 'DataMatrix', holds: 'elements' }],
  ['Q3', { carrier: 'QR', holds: 'elements' }],
  ['e0', { carrier: 'DataBar', holds: 'elements' }],
  ['J1', { carrier: 'DotCode', holds: 'elements' }],
  ['E0', { carrier: 'EAN/UPC', holds: { digits: 13 } }],
  ['E4', { carrier: 'EAN/UPC', holds: { digits: 8 } }],
  ['d1', { carrier: 'DataMatrix', holds: 'plain' }],
  ['Q1', { carrier: 'QR', holds: 'plain' }],
  ['J0', { carrier: 'DotCode', holds: 'plain' }],
]);

/** What carries HIBC and plain digits, but is no carrier of GS1 data and unknown to its tests. */
const OTHER_SYMBOLOGIES: ReadonlyMap<string, Symbology> = new Map<string, Symbology>([
  ['C0', { carrier: 'Code 128', holds: 'plain' }],
  ...Array.from({ length: 8 }, (_, n): [string, Symbology] => [
    `A${n}`,
    { carrier: 'Code 39', holds: 'plain' },
  ]),
  ['I0', { carrier: 'ITF-14', holds: { digits: 14 } }],
  ['I1', { carrier: 'ITF-14', holds: { digits: 14 } }],
  ['Q0', { carrier: 'QR', holds: 'plain' }],
  ['Q2', { carrier: 'QR', holds: 'plain', characterSet: true }],
  ['Q4', { carrier: 'QR', holds: 'elements', characterSet: true }],
  ['d4', { carrier: 'DataMatrix', holds: 'plain', characterSet: true }],
  ['d5', { carrier: 'DataMatrix', holds: 'elements', characterSet: true }],
  ['z0', { carrier: 'Aztec', holds: 'plain' }],
  ['z3', { carrier: 'Aztec', holds: 'plain', characterSet: true }],
  ...['L0', 'L1', 'L2'].map((name): [string, Symbology] => [
    name,
    { carrier: 'PDF417', holds: 'plain' },
  ]),
]);

const CHARACTER_SET = /^\\\d{6}/;

/** A composite symbol sends its second part as a message of its own. */
const COMPOSITE = '|]e0';

export type ScanContent =
  | { readonly content: 'plain'; readonly text: string }
  | {
      readonly content: 'digital-link' | 'element-string' | 'gtin';
      readonly elements: readonly Element[];
    };

export type Scan = {
  readonly carrier: Carrier;
  /** Where the data begin: behind the symbology identifier and the number of a character set. */
  readonly payloadAt: number;
} & ScanContent;

export interface ScanOptions {
  readonly currentYear: number;
  readonly rules?: readonly RelationRule[];
  /** Also symbologies that carry no GS1 data. */
  readonly anyCarrier?: boolean;
}

/** What the symbology identifier at the beginning of a scan says. */
export function symbologyOf(
  text: string,
  { anyCarrier }: Pick<ScanOptions, 'anyCarrier'> = {},
): Symbology | undefined {
  if (!text.startsWith(']')) return undefined;
  const name = text.slice(1, 3);
  return SYMBOLOGIES.get(name) ?? (anyCarrier ? OTHER_SYMBOLOGIES.get(name) : undefined);
}

/** Reads what a scanner sends that begins with a symbology identifier, such as ]d2 or ]C1. */
export function readScan(text: string, options: ScanOptions): Result<Scan> {
  if (!text.startsWith(']') || text.length < 3) {
    const sentence = 'It does not begin with a symbology identifier such as ]d2.';
    return failed('missing_symbology_identifier', 0, sentence);
  }
  const symbology = symbologyOf(text, options);
  if (!symbology) {
    const sentence = `Symbols marked ${text.slice(0, 3)} are not read here.`;
    return failed('unsupported_symbology_identifier', 1, sentence);
  }
  const payloadAt = dataStart(text, symbology);
  const read = readPayload(text.slice(payloadAt), symbology.holds, options);
  return read.ok ? { ...read, carrier: symbology.carrier, payloadAt } : shifted(read, payloadAt);
}

/** Where the data of a scan begin. */
export function dataStart(text: string, { characterSet }: Symbology): number {
  const set = characterSet ? CHARACTER_SET.exec(text.slice(3)) : null;
  return 3 + (set?.[0].length ?? 0);
}

function readPayload(
  payload: string,
  holds: Symbology['holds'],
  options: ScanOptions,
): Result<ScanContent> {
  const { currentYear, rules = RELATION_RULES } = options;
  if (typeof holds === 'object') return readDigits(payload, holds.digits, options);
  if (holds === 'plain' && !isLinkOfOneCase(payload)) {
    return { ok: true, content: 'plain', text: payload };
  }
  const caret = holds === 'elements' ? payload.indexOf('^') : -1;
  if (caret >= 0) {
    const sentence = 'GS1 data cannot hold "^"; a separator is sent as the character U+001D.';
    return failed('illegal_character', caret, sentence);
  }
  const read =
    holds === 'elements'
      ? readElementString(payload, currentYear)
      : readDigitalLink(payload, currentYear);
  if (!read.ok) return read;
  const wrong = relationProblem(read.elements, rules);
  const content = holds === 'elements' ? 'element-string' : 'digital-link';
  return wrong ?? { ok: true, content, elements: read.elements };
}

/** EAN, UPC and ITF symbols hold a GTIN and nothing else, but for a composite part behind it. */
function readDigits(payload: string, digits: number, options: ScanOptions): Result<ScanContent> {
  const [gtin, more] = splitComposite(payload, digits);
  const wrong = digitsProblem(gtin, digits);
  if (wrong) return wrong;
  const identifier = findIdentifier('01');
  if (!identifier) throw new Error('The table of identifiers has no (01)');
  const element: Element = { identifier, value: gtin.padStart(14, '0'), at: 0 };
  if (more === undefined) return { ok: true, content: 'gtin', elements: [element] };
  const behind = digits + COMPOSITE.length;
  const read = readPayload(more, 'elements', { ...options, rules: [] });
  if (!read.ok) return shifted(read, behind);
  if (read.content === 'plain') return read;
  const elements = [element, ...read.elements.map((one) => ({ ...one, at: one.at + behind }))];
  const unfit = relationProblem(elements, options.rules ?? RELATION_RULES);
  return unfit ?? { ok: true, content: 'gtin', elements };
}

function splitComposite(payload: string, digits: number): [string, string | undefined] {
  if (payload.startsWith(COMPOSITE, digits)) {
    return [payload.slice(0, digits), payload.slice(digits + COMPOSITE.length)];
  }
  return [payload, undefined];
}

function digitsProblem(text: string, digits: number): Failed | undefined {
  if (text.length !== digits) {
    const code = text.length < digits ? 'too_short' : 'too_long';
    const at = Math.min(text.length, digits);
    return failed(code, at, `This symbol holds ${digits} digits, not ${text.length}.`);
  }
  const foreign = firstForeign(text, 'N');
  if (foreign >= 0) return failed('non_digit_character', foreign, 'This symbol holds only digits.');
  const right = wrongCheckDigit(text);
  if (right === undefined) return undefined;
  const sentence = `The check digit is ${text.slice(-1)}, but the digits before it give ${right}.`;
  return failed('incorrect_check_digit', digits - 1, sentence, { expected: right });
}

/** What a scanner sends for an element string in a carrier. */
export function writeScan(carrier: Carrier, elementString: string): string | undefined {
  for (const [name, symbology] of SYMBOLOGIES) {
    if (symbology.carrier === carrier && symbology.holds === 'elements') {
      return `]${name}${elementString}`;
    }
  }
  return undefined;
}
