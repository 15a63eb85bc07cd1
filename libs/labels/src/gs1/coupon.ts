import { firstForeign } from './character-sets.js';
import { dateFinding, type Finding, found } from './date-checks.js';

/** AI 8112: format 0 or 1, funder of 6 to 12 digits, offer of 6, serial of 6 to 15; nothing after. */
export function couponOffer(text: string): Finding | undefined {
  const foreign = foreignFinding(text);
  if (foreign) return foreign;
  const [format = 9, funder = 9] = [...text.slice(0, 2)].map(Number);
  const serialAt = 2 + funder + 6 + 6;
  const serial = Number(text.charAt(serialAt) || 'NaN');
  if (format <= 1 && funder <= 6 && text.length === serialAt + 1 + serial + 6) return undefined;
  return found('invalid_content', 0, 'The parts of this coupon do not fit its length.');
}

/** A part of a coupon: digits of a fixed number, or one digit that says how many follow. */
interface CouponPart {
  readonly what: string;
  /** What the first digit may be. */
  readonly of?: string;
  /** How many digits the part has; with `counted`, how many more than its first digit says. */
  readonly digits: number;
  readonly counted?: boolean;
  readonly date?: boolean;
}

const counted = (what: string, of: string, digits = 0): CouponPart => ({
  ...{ what, of, digits },
  counted: true,
});
const code = (what: string, of = '0123456789'): CouponPart => ({ what, of, digits: 1 });

/** A 9 in place of a count: the company is the first one again, and no digits follow. */
const SAME_COMPANY = '9';
const requirement = (which: string): readonly CouponPart[] => [
  counted(`${which} purchase requirement`, '12345'),
  code(`${which} requirement code`, '012349'),
  { what: `${which} family code`, digits: 3 },
];
const further = (which: string): readonly CouponPart[] => [
  ...requirement(which),
  counted(`company prefix of the ${which} purchase`, `0123456${SAME_COMPANY}`, 6),
];

const ALWAYS: readonly CouponPart[] = [
  counted('company prefix', '0123456', 6),
  { what: 'offer code', digits: 6 },
  counted('saved value', '12345'),
  ...requirement('first'),
];

/** What may follow, each once and in this order, behind the digit that names it. */
const OPTIONAL: readonly (readonly [digit: string, parts: readonly CouponPart[]])[] = [
  ['1', [code('rule of further purchases', '0123'), ...further('second')]],
  ['2', further('third')],
  ['3', [{ what: 'last day', digits: 6, date: true }]],
  ['4', [{ what: 'first day', digits: 6, date: true }]],
  ['5', [counted('serial number', '0123456789', 6)]],
  ['6', [counted('retailer', '1234567', 6)]],
  [
    '9',
    [
      code('code of the saved value', '01256'),
      code('item the value is saved on', '012'),
      code('mark of the store'),
      code('mark against doubling', '01'),
    ],
  ],
];

/**
 * AI 8110, the coupon code of North America: parts that say their own length, then optional ones. As the
 * check `couponcode` of the GS1 Barcode Syntax Dictionary has it.
 */
export function couponCode(text: string, currentYear: number): Finding | undefined {
  const foreign = foreignFinding(text);
  if (foreign) return foreign;
  let at = 0;
  const dates = new Map<string, string>();
  const read = (parts: readonly CouponPart[]): Finding | undefined => {
    for (const part of parts) {
      const next = partEnd(text, at, part, currentYear);
      if (typeof next !== 'number') return next;
      if (part.date) dates.set(part.what, text.slice(at, next));
      at = next;
    }
    return undefined;
  };
  const wrong = read(ALWAYS);
  if (wrong) return wrong;
  for (const [digit, parts] of OPTIONAL) {
    if (text.charAt(at) !== digit) continue;
    at += 1;
    const problem = read(parts);
    if (problem) return problem;
  }
  const [last, first] = [dates.get('last day'), dates.get('first day')];
  if (last !== undefined && first !== undefined && first > last) {
    return found('invalid_content', 0, 'The coupon ends before it begins.');
  }
  return at === text.length
    ? undefined
    : found('invalid_content', at, 'Digits are left over at the end of this coupon.');
}

/** Where a part ends that begins at a place, or what is wrong with it. */
function partEnd(
  text: string,
  at: number,
  { what, of, digits, counted, date }: CouponPart,
  currentYear: number,
): Finding | number {
  const first = text.charAt(at);
  if (first === '') return found('invalid_content', at, `The ${what} of this coupon is missing.`);
  if (of !== undefined && !of.includes(first)) {
    return found('invalid_content', at, `The ${what} of this coupon cannot begin with ${first}.`);
  }
  const alone = counted && first === SAME_COMPANY && what.startsWith('company prefix of');
  const end = alone ? at + 1 : at + digits + (counted ? 1 + Number(first) : 0);
  if (end > text.length) {
    return found('invalid_content', at, `The ${what} of this coupon is cut off.`);
  }
  if (!date) return end;
  const rules = { yearDigits: 2, day00: false } as const;
  const wrong = dateFinding(text.slice(at, end), rules, currentYear);
  return wrong ? { ...wrong, at: wrong.at + at } : end;
}

function foreignFinding(text: string): Finding | undefined {
  const foreign = firstForeign(text, 'N');
  return foreign < 0 ? undefined : found('non_digit_character', foreign, 'It has digits only.');
}
