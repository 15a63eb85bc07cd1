import { useMemo } from 'react';
import { useSession } from '../../app/session.js';
import { useSpeaking } from '../../text/text-provider.js';

/** Money for one of many: with up to four digits, where a cent would be too coarse. */
export function useUnitPrice(): (amount: string) => string {
  const { locale } = useSpeaking();
  const { currency } = useSession().practice;
  return useMemo(() => {
    const format = new Intl.NumberFormat(locale, {
      style: 'currency',
      currency,
      maximumFractionDigits: 4,
    });
    return (amount) => format.format(amount as Intl.StringNumericLiteral);
  }, [locale, currency]);
}
