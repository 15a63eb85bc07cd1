export type CharacterSet = 'N' | 'X' | 'Y' | 'Z';

const DIGITS = '0123456789';
const CAPITALS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';
const SMALL = 'abcdefghijklmnopqrstuvwxyz';

/** GS1 AI encodable character set 82, in the order that gives each character its weight. */
export const SET_82 = `!"%&'()*+,-./${DIGITS}:;<=>?${CAPITALS}_${SMALL}`;

/** The 32 characters that check pairs are written with. */
export const SET_32 = '23456789ABCDEFGHJKLMNPQRSTUVWXYZ';

const SETS: Record<CharacterSet, readonly boolean[]> = {
  N: members(DIGITS),
  X: members(SET_82),
  Y: members(`#-/${DIGITS}${CAPITALS}`),
  Z: members(`-${DIGITS}=${CAPITALS}_${SMALL}`),
};

function members(characters: string): boolean[] {
  const set = new Array<boolean>(128).fill(false);
  for (const character of characters) set[character.charCodeAt(0)] = true;
  return set;
}

/** Where the first character stands that is not in the set; -1 if all are. */
export function firstForeign(text: string, set: CharacterSet, from = 0, to = text.length): number {
  const allowed = SETS[set];
  for (let at = from; at < to; at += 1) {
    if (allowed[text.charCodeAt(at)] !== true) return at;
  }
  return -1;
}

export function isDigits(text: string): boolean {
  return text.length > 0 && firstForeign(text, 'N') < 0;
}

/** A character as a sentence may show it. */
export function shown(character: string): string {
  const code = character.codePointAt(0) ?? 0;
  if (code === 0x20) return 'a space';
  if (code === 0x1d) return 'a separator';
  return code < 0x21 || code > 0x7e
    ? `the character U+${code.toString(16).toUpperCase().padStart(4, '0')}`
    : `"${character}"`;
}
