import { useMemo } from 'react';
import { useSpeaking } from '../../text/text-provider.js';
import type { Typed } from './template-draft.js';

/** Decimals as one types them here: '0.06' or '0,06', without separators of thousands. */
export function useTyped(): Typed {
  const { locale } = useSpeaking();
  return useMemo(() => {
    const format = new Intl.NumberFormat(locale, { useGrouping: false, maximumFractionDigits: 6 });
    return (decimal) => format.format(decimal as Intl.StringNumericLiteral);
  }, [locale]);
}
