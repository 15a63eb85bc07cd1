import { describe, expect, it } from '@jest/globals';
import { currencyProblem, timeZoneProblem } from './practice-rules.js';

describe('the currency of a practice', () => {
  it.each(['EUR', 'USD', 'JPY', 'KWD'])('may be %s', (currency) => {
    expect(currencyProblem(currency)).toBeUndefined();
  });

  it.each(['eur', 'XYZ', 'EURO', '', '€'])('may not be %j', (currency) => {
    expect(currencyProblem(currency)).toMatch(/^must be/);
  });
});

describe('the time zone of a practice', () => {
  it.each(['UTC', 'Europe/Berlin', 'America/Argentina/Ushuaia'])('may be %s', (zone) => {
    expect(timeZoneProblem(zone)).toBeUndefined();
  });

  it.each(['', '+02:00', 'Mars/Olympus', 'Europe/Berlin; DROP', 'x'.repeat(65)])(
    'may not be %j',
    (zone) => expect(timeZoneProblem(zone)).toMatch(/^must be/),
  );
});
