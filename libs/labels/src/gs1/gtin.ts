import { failed, type Result } from '../problem.js';
import { firstForeign, shown } from './character-sets.js';
import { wrongCheckDigit } from './check-digits.js';

const LENGTHS = [8, 12, 13, 14];

/** Whether it could be a GTIN that stands alone: nothing but 8, 12, 13 or 14 digits. */
export function looksLikeGtin(text: string): boolean {
  return LENGTHS.includes(text.length) && firstForeign(text, 'N') < 0;
}

/** Reads a GTIN-8, -12, -13 or -14 and pads it to 14 digits, the way it stands behind (01). */
export function readGtin(text: string): Result<{ readonly gtin14: string }> {
  const foreign = firstForeign(text, 'N');
  if (foreign >= 0) {
    const sentence = `A GTIN has digits only, not ${shown(text.charAt(foreign))}.`;
    return failed('non_digit_character', foreign, sentence);
  }
  if (!LENGTHS.includes(text.length)) {
    const sentence = `A GTIN has 8, 12, 13 or 14 digits, not ${text.length}.`;
    return failed('incorrect_length', text.length, sentence);
  }
  const right = wrongCheckDigit(text);
  if (right !== undefined) {
    const sentence =
      `The check digit is ${text.slice(-1)}, but the digits before it give ${right}. ` +
      'If this is not a GTIN, put its identifier in brackets.';
    return failed('incorrect_check_digit', text.length - 1, sentence, { expected: right });
  }
  return { ok: true, gtin14: text.padStart(14, '0') };
}

/** A GTIN-14 as it may also be written: without the zeros that pad it. */
export function spellingsOfGtin(gtin14: string): readonly string[] {
  const shorter = [13, 12, 8].filter((length) => /^0*$/.test(gtin14.slice(0, 14 - length)));
  return [gtin14, ...shorter.map((length) => gtin14.slice(14 - length))];
}
