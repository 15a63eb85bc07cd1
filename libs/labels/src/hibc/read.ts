import { shown } from '../gs1/character-sets.js';
import { type Failed, failed, type Result, shifted } from '../problem.js';
import { checkCharacter, firstForeignToHibc } from './check-character.js';
import { type HibcProduction, mergeProduction, noProduction, readProduction } from './secondary.js';

export type HibcStructure = 'concatenated' | 'primary' | 'secondary';

export interface HibcProduct {
  readonly lic: string;
  readonly pcn: string;
  /** 0 is the single unit, 1 to 8 are packings of it, 9 a varying quantity. */
  readonly uom: string;
}

/** One symbol of a HIBC supplier label. */
export interface HibcSymbol {
  readonly structure: HibcStructure;
  readonly check: string;
  readonly product: HibcProduct | null;
  /** What ties a secondary symbol to its primary one: the check character of that. */
  readonly link: string | null;
  readonly production: HibcProduction | null;
}

export type Hibc = Result<{ readonly symbol: HibcSymbol }>;

const LIC = 4;
const PCN_MOST = 18;

export interface HibcOptions {
  /** It stands behind a symbol with the product: "+S" and "+Q" are supplements, not a company. */
  readonly supplement?: boolean;
}

/** Reads one symbol of a HIBC supplier label: primary, secondary or both joined. */
export function readHibc(given: string, currentYear: number, options: HibcOptions = {}): Hibc {
  const starred = given.startsWith('*+') && given.endsWith('*') && given.length > 2;
  if (starred) return moved(readBare(given.slice(1, -1), currentYear, options), 1);
  return readBare(given, currentYear, options);
}

function moved(read: Hibc, by: number): Hibc {
  return read.ok ? read : shifted(read, by);
}

function readBare(given: string, currentYear: number, options: HibcOptions): Hibc {
  if (!given.startsWith('+')) {
    return failed('malformed', 0, 'A HIBC label begins with "+".');
  }
  // A check character that is a space is printed as "_".
  const text = given.endsWith('_') ? `${given.slice(0, -1)} ` : given;
  const foreign = firstForeignToHibc(text);
  if (foreign >= 0) {
    const character = text.charAt(foreign);
    const why = /[a-z]/.test(character) ? '; it has capitals only: the scanner changed them' : '';
    const sentence = `A HIBC label cannot hold ${shown(character)}${why}.`;
    return failed('illegal_character', foreign, sentence);
  }
  if (text.length < 4) return failed('too_short', text.length, 'The label ends too early.');
  const wrong = checkProblem(text);
  if (wrong) return wrong;
  if (text.startsWith('+/')) {
    const sentence = 'This is a label of a provider of care ("+/"), not of a supplier.';
    return failed('unsupported_standard', 1, sentence);
  }
  if (/^\+(\$|\d{5}|1[46]D)/.test(text)) return secondary(text, currentYear);
  return /^\+[SQ]/.test(text)
    ? primaryOrSupplement(text, currentYear, options)
    : primary(text, currentYear);
}

/**
 * A supplement in a symbol of its own, such as "+S4012TJ", may look like a company that begins with S or
 * Q: what can be a product is one, unless it stands behind another.
 */
function primaryOrSupplement(text: string, currentYear: number, options: HibcOptions): Hibc {
  const product = primary(text, currentYear);
  if (product.ok && !options.supplement) return product;
  const supplement = secondary(text, currentYear);
  return supplement.ok ? supplement : product;
}

function checkProblem(text: string): Failed | undefined {
  const at = text.length - 1;
  const right = checkCharacter(text.slice(0, at));
  if (text.charAt(at) === right) return undefined;
  const sentence =
    `The check character is ${quoted(text.charAt(at))}, but the characters before it give ` +
    `${quoted(right)}.${lostSpace(text)}`;
  return failed('check_character', at, sentence, { expected: right });
}

/** A check character that is a space is easily lost at the end of a text. */
function lostSpace(text: string): string {
  return checkCharacter(text) === ' ' ? ' Perhaps a space at the end was lost on the way.' : '';
}

function quoted(character: string): string {
  return character === ' ' ? 'a space' : `"${character}"`;
}

function secondary(text: string, currentYear: number): Hibc {
  const end = text.length - 2;
  const read = readProduction(text, { from: 1, to: end }, currentYear);
  if (!read.ok) return read;
  return {
    ok: true,
    symbol: {
      structure: 'secondary',
      check: text.charAt(end + 1),
      product: null,
      link: text.charAt(end),
      production: read.production,
    },
  };
}

/** The check character itself may be a slash: only one before it parts the label. */
function primary(text: string, currentYear: number): Hibc {
  const last = text.length - 1;
  const slash = text.slice(0, last).indexOf('/');
  const end = slash < 0 ? last : slash;
  const read = readProduct(text.slice(0, end));
  if (!read.ok) return read;
  const { product } = read;
  const check = text.charAt(last);
  if (slash < 0) {
    const symbol = { check, product, link: null, production: null };
    return { ok: true, symbol: { structure: 'primary', ...symbol } };
  }
  const production = readProduction(text, { from: slash + 1, to: last }, currentYear);
  if (!production.ok) return production;
  const symbol = { check, product, link: null, production: production.production };
  return { ok: true, symbol: { structure: 'concatenated', ...symbol } };
}

function readProduct(text: string): Result<{ readonly product: HibcProduct }> {
  const odd = text.slice(1).search(/[^A-Z0-9]/);
  if (odd >= 0) {
    const sentence = 'The company and its product are written with A-Z and 0-9 only.';
    return failed('illegal_character', odd + 1, sentence, { identifier: 'product' });
  }
  if (!/[A-Z]/.test(text.charAt(1))) {
    const sentence = 'The four characters that name the company begin with a letter.';
    return failed('lic_must_start_with_letter', 1, sentence, { identifier: 'company' });
  }
  const last = text.length - 1;
  const pcn = text.slice(1 + LIC, last);
  if (pcn === '') {
    const sentence = 'Behind the company, a product number and a unit of measure are missing.';
    return failed('too_short', text.length, sentence, { identifier: 'product' });
  }
  if (pcn.length > PCN_MOST) {
    const sentence = `A product number has at most ${PCN_MOST} characters, not ${pcn.length}.`;
    return failed('pcn_too_long', 1 + LIC + PCN_MOST, sentence, { identifier: 'product' });
  }
  const uom = text.charAt(last);
  if (!/\d/.test(uom)) {
    const sentence = 'The unit of measure at the end of the product is a digit.';
    return failed('non_digit_character', last, sentence, { identifier: 'unit' });
  }
  return { ok: true, product: { lic: text.slice(1, 1 + LIC), pcn, uom } };
}

/** Checks that a secondary symbol belongs to a primary one; both are already read. */
export function linkProblem(first: HibcSymbol, second: HibcSymbol): Failed | undefined {
  if (second.link === first.check) return undefined;
  const sentence =
    `The two symbols do not belong together: the second names ${quoted(second.link ?? '')} as the ` +
    `check character of the first, which has ${quoted(first.check)}.`;
  return failed('link_character', 0, sentence, { expected: first.check });
}

/** Reads the symbols of a label that were printed apart: the one with the product is the first. */
export function readHibcPair(texts: readonly string[], currentYear: number): Hibc {
  const [first = '', ...others] = texts;
  const one = readHibc(first, currentYear);
  if (!one.ok) return one;
  if (one.symbol.structure !== 'primary' || others.length === 0) return noPair();
  const production = noProduction();
  let link: string | null = null;
  for (const text of others) {
    const other = readHibc(text, currentYear, { supplement: true });
    if (!other.ok) return other;
    if (other.symbol.structure !== 'secondary') return noPair();
    const at = Math.max(0, text.trimEnd().length - 2);
    const wrong = linkProblem(one.symbol, other.symbol);
    if (wrong) return { ok: false, problem: { ...wrong.problem, position: at } };
    const twice = mergeProduction(production, other.symbol.production ?? {});
    if (twice) return twice;
    link = other.symbol.link;
  }
  const { check, product } = one.symbol;
  return { ok: true, symbol: { structure: 'concatenated', check, product, link, production } };
}

function noPair(): Failed {
  const sentence = 'The symbols of a label are one with the product, then those with the lot.';
  return failed('malformed', 0, sentence);
}
