import { type Money, money, moneyFromMicro, multiplyRatio, parseDecimal } from '#lib/measure';

export interface ChairRate {
  readonly perMinute: Money;
  readonly perHour: Money;
  readonly minutes: bigint;
}

const MICRO = 1_000_000n;

/** Whole minutes in hours as they are typed ('2560', '2560.5'); undefined: not a whole number. */
export function minutesOf(hours: string): bigint | undefined {
  const read = parseDecimal(hours, 6);
  if (!read.ok || read.value <= 0n) return undefined;
  const minutes = read.value * 60n;
  return minutes % MICRO === 0n ? minutes / MICRO : undefined;
}

/** Yearly cost by practical capacity; each figure rounded once, to a millionth. */
export function rateOf(yearlyCost: string, minutes: bigint): ChairRate | undefined {
  if (minutes <= 0n || !parseDecimal(yearlyCost, 6).ok) return undefined;
  const yearly = money(yearlyCost);
  return {
    perMinute: moneyFromMicro(multiplyRatio(yearly, 1n, minutes, 'half-up')),
    perHour: moneyFromMicro(multiplyRatio(yearly, 60n, minutes, 'half-up')),
    minutes,
  };
}

/** Hours of so many minutes, as the service keeps them: 153600 -> '2560'. */
export function hoursOf(minutes: number): string {
  const micro = multiplyRatio(BigInt(minutes) * MICRO, 1n, 60n, 'half-up');
  const digits = micro.toString().padStart(7, '0');
  const fraction = digits.slice(-6).replace(/0+$/, '');
  return fraction === '' ? digits.slice(0, -6) : `${digits.slice(0, -6)}.${fraction}`;
}
