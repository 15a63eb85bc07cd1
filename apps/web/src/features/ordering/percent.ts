import { formatQuantity, quantityFromMicro } from '#lib/measure';
import { asDecimal } from '../../ui/decimal-text.js';
import { micro } from '../../ui/drawn.js';

/** '0.95' as it is typed: '95'. */
export function asPercent(share: string): string {
  return formatQuantity(quantityFromMicro(micro(share) * 100n));
}

/** '97,5' as the service wants it: '0.975'; undefined when it is no share of at most `most` %. */
export function shareTyped(typed: string, most = '99.99'): string | undefined {
  const percent = asDecimal(typed, 4);
  if (percent === undefined) return undefined;
  const value = micro(percent);
  if (value <= 0n || value > micro(most)) return undefined;
  return formatQuantity(quantityFromMicro(value / 100n));
}
