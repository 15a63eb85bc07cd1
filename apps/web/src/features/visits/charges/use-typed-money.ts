import { useMemo } from 'react';
import { useSession } from '../../../app/session.js';
import { useSpeaking } from '../../../text/text-provider.js';

/** Money as one types it here, to the coin: '104.50' or '104,50'. */
export function useTypedMoney(): (decimal: string) => string {
  const { locale } = useSpeaking();
  const { currency } = useSession().practice;
  return useMemo(() => {
    const { minimumFractionDigits = 2 } = new Intl.NumberFormat(locale, {
      style: 'currency',
      currency,
    }).resolvedOptions();
    const format = new Intl.NumberFormat(locale, {
      useGrouping: false,
      minimumFractionDigits,
      maximumFractionDigits: 6,
    });
    return (decimal) => format.format(decimal as Intl.StringNumericLiteral);
  }, [locale, currency]);
}
