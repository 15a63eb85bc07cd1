import { type Fault, fault } from './problems.js';

/** Which decimal mark the file uses, as far as its own cells prove it. */
export interface DecimalHabit {
  readonly comma: boolean;
  readonly point: boolean;
}

/** "12,5" or "1.234,50" can only be a comma; "0,125" too, because no group begins with a nought. */
const ONLY_COMMA = /^(\d+,(\d{1,2}|\d{4,})|0,\d+|\d{1,3}(\.\d{3})+,\d+|\d{4,},\d+)$/;
const ONLY_POINT = /^(\d+\.(\d{1,2}|\d{4,})|0\.\d+|\d{1,3}(,\d{3})+\.\d+|\d{4,}\.\d+)$/;
/** One mark with three digits behind: a decimal to some, a thousand to others. */
const EITHER = /^[1-9]\d{0,2}([.,])\d{3}$/;
const GROUPS = /^[1-9]\d{0,2}(([.,])\d{3})(\2\d{3})+$/;

export function decimalHabit(texts: Iterable<string>): DecimalHabit {
  let comma = false;
  let point = false;
  for (const text of texts) {
    comma ||= ONLY_COMMA.test(text);
    point ||= ONLY_POINT.test(text);
    if (comma && point) break;
  }
  return { comma, point };
}

export type ReadNumber =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly fault: Fault };

/**
 * A number that somebody typed, as a plain decimal with a point. A decimal comma is taken where it
 * cannot be anything else; "1,234" is refused unless other cells of the file prove their mark.
 */
export function readNumber(typed: string, habit: DecimalHabit): ReadNumber {
  const text = typed.trim();
  if (/^\d+$/.test(text)) return { ok: true, text };
  if (ONLY_COMMA.test(text)) {
    return { ok: true, text: text.replaceAll('.', '').replace(',', '.') };
  }
  if (ONLY_POINT.test(text)) return { ok: true, text: text.replaceAll(',', '') };
  const mark = EITHER.exec(text)?.[1];
  if (mark === ',' && habit.comma && !habit.point) {
    return { ok: true, text: text.replace(',', '.') };
  }
  if (mark === '.' && !habit.comma) return { ok: true, text };
  if (mark !== undefined || GROUPS.test(text)) {
    const digits = text.replace(/[.,]/g, '');
    if (mark === undefined) return { ok: false, fault: fault('grouped-digits', digits) };
    return { ok: false, fault: fault('two-readings', text.replace(',', '.'), digits) };
  }
  return { ok: false, fault: fault('not-a-number') };
}
