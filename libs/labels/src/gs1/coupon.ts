import { firstForeign } from './character-sets.js';
import { type Finding, found } from './date-checks.js';

/** AI 8112: format 0 or 1, funder of 6 to 12 digits, offer of 6, serial of 6 to 15; nothing after. */
export function couponOffer(text: string): Finding | undefined {
  const foreign = firstForeign(text, 'N');
  if (foreign >= 0) return found('non_digit_character', foreign, 'It has digits only.');
  const [format = 9, funder = 9] = [...text.slice(0, 2)].map(Number);
  const serialAt = 2 + funder + 6 + 6;
  const serial = Number(text.charAt(serialAt) || 'NaN');
  if (format <= 1 && funder <= 6 && text.length === serialAt + 1 + serial + 6) return undefined;
  return found('invalid_content', 0, 'The parts of this coupon do not fit its length.');
}
