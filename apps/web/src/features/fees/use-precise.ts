import { useMemo } from 'react';
import { useSession } from '../../app/session.js';
import { useSpeaking } from '../../text/text-provider.js';

type Decimal = Intl.StringNumericLiteral;

/** Figures with every digit they have, where rounding them would hide what is to be seen. */
export function usePrecise() {
  const { locale } = useSpeaking();
  const { currency } = useSession().practice;
  return useMemo(() => {
    const number = new Intl.NumberFormat(locale, { maximumFractionDigits: 20 });
    const style = { style: 'currency', currency, maximumFractionDigits: 6 } as const;
    const money = new Intl.NumberFormat(locale, style);
    const share = new Intl.NumberFormat(locale, { style: 'percent', maximumFractionDigits: 4 });
    return {
      number: (value: string) => number.format(value as Decimal),
      money: (value: string) => money.format(value as Decimal),
      /** A share such as '0.8'. */
      percent: (value: string) => share.format(value as Decimal),
    };
  }, [locale, currency]);
}
