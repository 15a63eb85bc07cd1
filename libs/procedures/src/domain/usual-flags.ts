// Categories are the practice's own words: these are told by their stems, English and German.

/** Stays usable for the minutes of a visit once its dose is opened. Common practice, no source. */
const STAYS_USABLE =
  /composite|komposit|paste|adhesi|adhäsi|bond|primer|etch|ätz|ana?esth|anästh|infiltra/i;

/** Sets by itself once it is mixed, so that the next tooth needs another dose. */
const SETS = /cement|zement|ionomer/i;

const ANAESTHETIC = /ana?esth|anästh|needle|nadel|kanüle/i;

/** Whether one single dose of such a thing usually serves several restorations of one visit. */
export function usuallySharesDose(category: string): boolean {
  return STAYS_USABLE.test(category) && !SETS.test(category);
}

/** Whether such a thing is usually there for anaesthesia. */
export function isUsuallyAnaesthetic(category: string): boolean {
  return ANAESTHETIC.test(category);
}
