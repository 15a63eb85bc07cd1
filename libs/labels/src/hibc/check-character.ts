/** The characters of HIBC symbols in the order of their values, as in Code 39. */
const CHARACTERS = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ-. $/+%';

const VALUES = new Array<number>(128).fill(-1);
for (let value = 0; value < CHARACTERS.length; value += 1) {
  VALUES[CHARACTERS.charCodeAt(value)] = value;
}

/** Where the first character stands that no HIBC symbol can hold; -1 if there is none. */
export function firstForeignToHibc(text: string): number {
  for (let at = 0; at < text.length; at += 1) {
    if ((VALUES[text.charCodeAt(at)] ?? -1) < 0) return at;
  }
  return -1;
}

/** The check character of everything before it, the leading plus included: the sum modulo 43. */
export function checkCharacter(text: string): string {
  let sum = 0;
  for (let at = 0; at < text.length; at += 1) sum += VALUES[text.charCodeAt(at)] ?? 0;
  return CHARACTERS.charAt(sum % CHARACTERS.length);
}
