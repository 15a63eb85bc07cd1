import { useMemo } from 'react';
import { useSpeaking } from '../text/text-provider.js';

/** Decimals as one types them here: '0.06' or '0,06', without separators of thousands. */
export function useTyped(): (decimal: string) => string {
  const { locale } = useSpeaking();
  return useMemo(() => {
    const format = new Intl.NumberFormat(locale, { useGrouping: false, maximumFractionDigits: 8 });
    return (decimal) => format.format(decimal as Intl.StringNumericLiteral);
  }, [locale]);
}
