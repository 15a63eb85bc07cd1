const currencies = new Set(Intl.supportedValuesOf('currency'));

export function currencyProblem(currency: string): string | undefined {
  const known = /^[A-Z]{3}$/.test(currency) && currencies.has(currency);
  return known ? undefined : 'must be the three capital letters of a currency, e.g. EUR';
}

/** A place's zone, not a fixed offset: offsets know no summer time and databases read their sign
 * the other way round. */
export function timeZoneProblem(zone: string): string | undefined {
  const problem = 'must be the name of a time zone, e.g. Europe/Berlin';
  if (!/^[A-Za-z][A-Za-z0-9_/+-]{1,63}$/.test(zone)) return problem;
  try {
    new Intl.DateTimeFormat('en', { timeZone: zone });
    return undefined;
  } catch (error) {
    if (error instanceof RangeError) return problem;
    throw error;
  }
}
