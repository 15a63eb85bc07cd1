import { type Failed, failed } from '../problem.js';
import { type Elements, readElementString, SEPARATOR } from './element-string.js';
import type { Element } from './values.js';

/** What scanners and copied text put in the place of FNC1; none of it can be part of a value. */
const WRITTEN_OUT = ['␝', '{GS}', '[GS]', '\\x1d', '\\x1D', '\\u001d', '\\u001D', '^]'];

/** Single characters that scanners are set to send instead. */
const REPLACEMENTS = ['^', '|', '~', '#', '@'];

/**
 * Written out with signs that a value may hold. No lot is called "A1<GS>17261231": read as a value, it
 * would hide the expiry behind it.
 */
const SPELLED = /<(?:GS|FNC1)>/i;

/** Where a separator is spelled out in a way that could be part of a value; -1 if nowhere. */
export function spelledSeparator(text: string): number {
  return text.search(SPELLED);
}

export interface Separated {
  readonly elements: readonly Element[];
  /** What stood for the separator, if it was not the character itself. */
  readonly separator: string | null;
}

/**
 * Reads an element string whose separators were replaced on the way, but only if there is one way to
 * read it: the sign ends every value that needs an end, more follows behind it, and nothing else fits.
 */
export function readSeparated(
  text: string,
  currentYear: number,
  options: { readonly writtenOutOnly?: boolean } = {},
): ({ readonly ok: true } & Separated) | Failed {
  if (spelledSeparator(text) >= 0) return readSpelled(text, currentYear);
  const plain = readElementString(text, currentYear);
  if (plain.ok) return { ok: true, elements: plain.elements, separator: null };
  if (text.includes(SEPARATOR)) return plain;
  const signs = options.writtenOutOnly ? WRITTEN_OUT : [...WRITTEN_OUT, ...REPLACEMENTS];
  const readings = signs.flatMap((separator) => {
    if (!text.includes(separator)) return [];
    const elements = readWith(text, separator, currentYear);
    return elements ? [{ elements, separator }] : [];
  });
  const [only, another] = readings;
  if (!only) return plain;
  if (another) {
    const sentence = `Both "${only.separator}" and "${another.separator}" could be the separator.`;
    return failed('ambiguous_separator', text.indexOf(only.separator), sentence);
  }
  return { ok: true, ...only };
}

function readSpelled(
  text: string,
  currentYear: number,
): ({ readonly ok: true } & Separated) | Failed {
  const at = spelledSeparator(text);
  const separator = SPELLED.exec(text)?.[0] ?? '';
  // One at the very end ends nothing; scanners and lists have it all the same.
  const data = text.endsWith(separator) ? text.slice(0, -separator.length) : text;
  const elements =
    spelledSeparator(data) < 0
      ? undefined
      : readWith(data, separator, currentYear, { anywhere: true });
  if (elements) return { ok: true, elements, separator };
  const alone = readElementString(data, currentYear);
  if (alone.ok && spelledSeparator(data) < 0) {
    return { ok: true, elements: alone.elements, separator };
  }
  const sentence = `"${separator}" stands for a separator here, but the label cannot be read with it.`;
  return failed('ambiguous_separator', at, sentence);
}

interface Places {
  /** Also behind what needs no separator, as in a symbol; a lone sign there is no proof of one. */
  readonly anywhere?: boolean;
}

function readWith(
  text: string,
  sign: string,
  currentYear: number,
  { anywhere = false }: Places = {},
): Element[] | undefined {
  const replaced = text.replaceAll(sign, SEPARATOR);
  const read: Elements = readElementString(replaced, currentYear);
  if (!read.ok) return undefined;
  const last = read.elements.length - 1;
  let longer = 0;
  const elements: Element[] = [];
  for (const [index, element] of read.elements.entries()) {
    elements.push({ ...element, at: element.at + longer });
    if (replaced.charAt(element.at + element.value.length) !== SEPARATOR) continue;
    if (!anywhere && (element.identifier.predefined || index === last)) return undefined;
    longer += sign.length - 1;
  }
  return elements;
}
