import { type HibcSymbol, readHibc } from './read.js';

/** More than the symbols of one label can hold. */
const LONGEST = 250;
const MOST_SYMBOLS = 5;

export interface HibcPart {
  readonly text: string;
  readonly at: number;
  readonly symbol: HibcSymbol;
}

/**
 * Parts the symbols of one label that a scanner sent without anything between them. A "+" may also be
 * a link or a check character, so a place is one only if the check character of every symbol is right
 * and each names the first one by its link. Undefined if there is no such way.
 */
export function splitHibc(text: string, currentYear: number): readonly HibcPart[] | undefined {
  if (text.length > LONGEST) return undefined;
  for (let at = text.indexOf('+', 1); at >= 0; at = text.indexOf('+', at + 1)) {
    const first = readHibc(text.slice(0, at), currentYear);
    if (!first.ok || first.symbol.structure !== 'primary') continue;
    const link = first.symbol.check;
    const rest = secondaries(text, { at, link, left: MOST_SYMBOLS - 1 }, currentYear);
    if (rest) return [{ text: text.slice(0, at), at: 0, symbol: first.symbol }, ...rest];
  }
  return undefined;
}

interface Rest {
  readonly at: number;
  readonly link: string;
  readonly left: number;
}

function secondaries(
  text: string,
  { at, link, left }: Rest,
  currentYear: number,
): readonly HibcPart[] | undefined {
  const read = (end: number): readonly HibcPart[] | undefined => {
    const part = text.slice(at, end);
    const one = readHibc(part, currentYear, { supplement: true });
    if (!one.ok || one.symbol.structure !== 'secondary') return undefined;
    return one.symbol.link === link ? [{ text: part, at, symbol: one.symbol }] : undefined;
  };
  const whole = read(text.length);
  if (whole || left <= 1) return whole;
  for (let end = text.indexOf('+', at + 1); end >= 0; end = text.indexOf('+', end + 1)) {
    const one = read(end);
    const more = one && secondaries(text, { at: end, link, left: left - 1 }, currentYear);
    if (more) return [...one, ...more];
  }
  return undefined;
}
