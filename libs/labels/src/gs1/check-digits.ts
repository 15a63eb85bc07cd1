import { SET_32, SET_82 } from './character-sets.js';

/**
 * The check digit of GTIN, SSCC, GLN and the like for the digits before it: weights 3, 1, 3, 1 from
 * the right, what is missing to the next ten.
 */
export function checkDigit(digits: string): string {
  let sum = 0;
  let weight = 3;
  for (let at = digits.length - 1; at >= 0; at -= 1) {
    sum += weight * (digits.charCodeAt(at) - 48);
    weight = 4 - weight;
  }
  return String((10 - (sum % 10)) % 10);
}

/** The digit that should be at the end, or undefined if it is there. */
export function wrongCheckDigit(digits: string): string | undefined {
  const right = checkDigit(digits.slice(0, -1));
  return digits.endsWith(right) ? undefined : right;
}

const PRIMES = primes(97);

function primes(count: number): number[] {
  const found: number[] = [];
  for (let candidate = 2; found.length < count; candidate += 1) {
    if (found.every((prime) => candidate % prime !== 0)) found.push(candidate);
  }
  return found;
}

/** The check pair of alphanumeric keys: values times primes from the right, modulo 1021. */
export function checkPair(text: string): string {
  let sum = 0;
  for (let at = 0; at < text.length; at += 1) {
    sum += SET_82.indexOf(text.charAt(at)) * (PRIMES[text.length - 1 - at] ?? 0);
  }
  sum %= 1021;
  return SET_32.charAt(sum >> 5) + SET_32.charAt(sum & 31);
}
