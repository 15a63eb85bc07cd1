import type { Decimal6 } from './decimals.js';

// Sums and differences are exact, and only of two numbers of one kind: the compiler refuses to add
// money to a quantity. The casts below put back the kind that plain bigint arithmetic loses.

export function add<T extends Decimal6>(a: T, b: T): T {
  return plus(a, b) as T;
}

export function subtract<T extends Decimal6>(a: T, b: T): T {
  return plus(a, minus(b)) as T;
}

/** The sum of a list; nothing for an empty one. */
export function sum<T extends Decimal6>(list: readonly T[]): T {
  return list.reduce(plus, 0n) as T;
}

export function negate<T extends Decimal6>(value: T): T {
  return minus(value) as T;
}

/** Negative, zero or positive, as a sort function wants it. */
export function compare<T extends Decimal6>(a: T, b: T): -1 | 0 | 1 {
  if (a < b) return -1;
  return a > b ? 1 : 0;
}

export function isZero(value: Decimal6): boolean {
  return value === 0n;
}

export function min<T extends Decimal6>(a: T, b: T): T {
  return b < a ? b : a;
}

export function max<T extends Decimal6>(a: T, b: T): T {
  return b > a ? b : a;
}

function plus(a: bigint, b: bigint): bigint {
  return a + b;
}

function minus(n: bigint): bigint {
  return -n;
}
