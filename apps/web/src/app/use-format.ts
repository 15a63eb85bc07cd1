import { useMemo } from 'react';
import { type Format, makeFormat } from '../text/format.js';
import { useSpeaking } from '../text/text-provider.js';
import { useSession } from './session.js';

/** Dates, numbers, amounts and money in the chosen language and the practice's currency. */
export function useFormat(): Format {
  const { locale, text } = useSpeaking();
  const { currency, timeZone } = useSession().practice;
  return useMemo(
    () => makeFormat({ locale, currency, timeZone, units: text.units }),
    [locale, currency, timeZone, text],
  );
}
