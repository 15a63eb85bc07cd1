import { parseDecimal } from '#lib/measure';

/**
 * A decimal as the service wants it from what a person typed: '0,06' -> '0.06'. undefined when it is
 * not a plain decimal, or has thousands separators that could be misread.
 */
export function asDecimal(typed: string, scale = 6): string | undefined {
  const text = typed.trim().replace(',', '.').replace(/^\./, '0.').replace(/\.$/, '');
  return parseDecimal(text, scale).ok ? text : undefined;
}
