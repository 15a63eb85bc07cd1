import { createHash } from 'node:crypto';

/** A small seeded generator of numbers (the mulberry32 step): the same name gives the same numbers. */
export class Dice {
  private state: number;

  constructor(name: string) {
    this.state = createHash('sha256').update(name).digest().readUInt32LE(0);
  }

  /** At least 0, less than 1. */
  next(): number {
    this.state = (this.state + 0x6d2b79f5) | 0;
    let t = Math.imul(this.state ^ (this.state >>> 15), 1 | this.state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  }

  /** A whole number between both, both included. */
  int(from: number, to: number): number {
    return from + Math.floor(this.next() * (to - from + 1));
  }

  chance(share: number): boolean {
    return this.next() < share;
  }

  pick<T>(list: readonly T[]): T {
    const found = list[this.int(0, list.length - 1)];
    if (found === undefined) throw new Error('There is nothing to pick from');
    return found;
  }

  /** One of the values, each with its weight. */
  weighted<T>(list: readonly (readonly [weight: number, value: T])[]): T {
    let left = this.next() * list.reduce((sum, [weight]) => sum + weight, 0);
    for (const [weight, value] of list) {
      left -= weight;
      if (left < 0) return value;
    }
    return this.pick(list)[1];
  }
}

/** The same name always gives the same UUID, so that loading can go on where it was stopped. */
export function demoId(...name: (string | number)[]): string {
  const bytes = createHash('sha256')
    .update(`traybook demo/${name.join('/')}`)
    .digest();
  bytes[6] = ((bytes[6] ?? 0) & 0x0f) | 0x50;
  bytes[8] = ((bytes[8] ?? 0) & 0x3f) | 0x80;
  const hex = bytes.toString('hex');
  const parts = [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20)];
  return [...parts, hex.slice(20, 32)].join('-');
}
