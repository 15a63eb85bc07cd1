import { firstForeign, SET_32 } from './character-sets.js';
import { checkPair, wrongCheckDigit } from './check-digits.js';
import { COUNTRIES, COUNTRY_LETTERS, CURRENCIES, PACKAGE_TYPES } from './code-lists.js';
import { couponCode, couponOffer } from './coupon.js';
import { type Check, DATE_CHECKS, type Finding, found } from './date-checks.js';

const PREFIX_DIGITS = 4;

function onlyIf(
  valid: (text: string) => boolean,
  sentence: string,
  code: Finding['code'] = 'invalid_content',
): Check {
  return (text) => (valid(text) ? undefined : found(code, 0, sentence));
}

function checkDigitFinding(text: string): Finding | undefined {
  const right = wrongCheckDigit(text);
  if (right === undefined) return undefined;
  const sentence = `The check digit is ${text.slice(-1)}, but the digits before it give ${right}.`;
  return { code: 'incorrect_check_digit', at: text.length - 1, sentence, expected: right };
}

function checkPairFinding(text: string): Finding | undefined {
  const at = text.length - 2;
  if (at < 0) return found('too_short', 0, 'It is too short to hold a check pair.');
  const right = checkPair(text.slice(0, at));
  if (text.endsWith(right)) return undefined;
  for (const character of text.slice(at)) {
    if (!SET_32.includes(character)) {
      return found('incorrect_check_pair', at, 'The last two characters are no check pair.');
    }
  }
  const sentence = `The check pair is ${text.slice(at)}, but the characters before it give ${right}.`;
  return { code: 'incorrect_check_pair', at, sentence, expected: right };
}

function companyPrefix(text: string): Finding | undefined {
  const sentence = `It must begin with a company prefix of at least ${PREFIX_DIGITS} digits.`;
  if (text.length < PREFIX_DIGITS) return found('invalid_company_prefix', 0, sentence);
  const foreign = firstForeign(text, 'N', 0, PREFIX_DIGITS);
  return foreign < 0 ? undefined : found('invalid_company_prefix', foreign, sentence);
}

function percentEncoded(text: string): Finding | undefined {
  const wrong = /%(?![0-9A-Fa-f]{2})/.exec(text);
  if (!wrong) return undefined;
  return found('invalid_content', wrong.index, 'A "%" must be followed by two hexadecimal digits.');
}

/** "=" fills up the end of a signature, once or twice, to a multiple of three (the dictionary's rule). */
function paddingFinding(text: string): Finding | undefined {
  const at = text.replace(/=+$/, '').length;
  const inside = text.slice(0, at).indexOf('=');
  if (inside >= 0) {
    return found('invalid_cset64_character', inside, 'A "=" may stand at the end only.');
  }
  const count = text.length - at;
  if (count === 0 || (count <= 2 && text.length % 3 === 0)) return undefined;
  return found('invalid_cset64_character', at, 'The "=" at the end do not fit the length.');
}

function pieceOfTotal(text: string): Finding | undefined {
  const half = text.length / 2;
  const [piece, total] = [Number(text.slice(0, half)), Number(text.slice(half))];
  if (piece === 0 || total === 0) {
    return found('invalid_content', piece === 0 ? 0 : half, 'Pieces are counted from 1.');
  }
  if (piece <= total) return undefined;
  return found('invalid_content', 0, `Piece ${piece} cannot be one of ${total}.`);
}

function positionInSequence(text: string): Finding | undefined {
  const parts = /^([1-9]\d*)\/([1-9]\d*)$/.exec(text);
  if (parts && Number(parts[1]) <= Number(parts[2])) return undefined;
  return found('invalid_content', 0, 'It must be a position and the last one, as in 1/2.');
}

/** ISO 13616: country, two check digits, account; modulo 97 with the first four at the end. */
function iban(text: string): Finding | undefined {
  if (!COUNTRY_LETTERS.has(text.slice(0, 2))) {
    return found('invalid_content', 0, 'An account number begins with the letters of a country.');
  }
  if (text.length <= 10) return found('too_short', 0, 'It is too short for an account number.');
  const wrong = text.search(/[^0-9A-Z]/);
  if (wrong >= 0) return found('invalid_content', wrong, 'An account number has A-Z and 0-9 only.');
  let rest = 0;
  for (const character of text.slice(4) + text.slice(0, 4)) {
    const value = Number.parseInt(character, 36);
    rest = (rest * (value < 10 ? 10 : 100) + value) % 97;
  }
  return rest === 1 ? undefined : found('invalid_content', 2, 'The check digits are wrong.');
}

const CHECKS: Readonly<Record<string, Check>> = {
  ...DATE_CHECKS,
  csum: checkDigitFinding,
  csumalpha: checkPairFinding,
  gcp: companyPrefix,
  padding: paddingFinding,
  pcenc: percentEncoded,
  pieceoftotal: pieceOfTotal,
  posinseqslash: positionInSequence,
  iban,
  couponcode: couponCode,
  couponposoffer: couponOffer,
  hasnondigit: onlyIf((t) => firstForeign(t, 'N') >= 0, 'It must not be digits only.'),
  hyphen: onlyIf((t) => t === '-', 'Only a hyphen for "below zero" may stand here.'),
  importeridx: onlyIf((t) => /^[-0-9A-Z_a-z]$/.test(t), 'It is no importer index.'),
  iso3166: onlyIf((t) => COUNTRIES.has(t), 'No country has this number.', 'not_iso3166'),
  iso3166999: onlyIf(
    (t) => t === '999' || COUNTRIES.has(t),
    'No country has this number.',
    'not_iso3166',
  ),
  iso3166alpha2: onlyIf(
    (t) => COUNTRY_LETTERS.has(t),
    'No country has these letters.',
    'not_iso3166_alpha2',
  ),
  iso4217: onlyIf((t) => CURRENCIES.has(t), 'No currency has this number.', 'not_iso4217'),
  iso5218: onlyIf((t) => /^[0129]$/.test(t), 'It must be 0, 1, 2 or 9.'),
  latitude: onlyIf((t) => Number(t) <= 1_800_000_000, 'It is no latitude.'),
  longitude: onlyIf((t) => Number(t) <= 3_600_000_000, 'It is no longitude.'),
  mediatype: onlyIf((t) => /^(0[1-9]|10|[89]\d)$/.test(t), 'It is no media type.'),
  nonzero: onlyIf((t) => Number(t) !== 0, 'It must not be zero.'),
  nozeroprefix: onlyIf((t) => t === '0' || !t.startsWith('0'), 'It must not begin with 0.'),
  packagetype: onlyIf((t) => PACKAGE_TYPES.has(t), 'It is no type of package.'),
  winding: onlyIf((t) => /^[019]$/.test(t), 'It must be 0, 1 or 9.'),
  yesno: onlyIf((t) => t === '0' || t === '1', 'It must be 0 or 1.', 'not_zero_or_one'),
  zero: onlyIf((t) => Number(t) === 0, 'It must be zero.'),
};

export function check(name: string): Check {
  const wanted = CHECKS[name];
  if (!wanted) throw new Error(`The table of identifiers names an unknown check: ${name}`);
  return wanted;
}
