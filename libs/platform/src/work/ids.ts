import { randomFillSync } from 'node:crypto';

const pool = new Uint8Array(16 * 256);
let used = pool.length;
let lastMillis = 0;
let counter = 0;

/**
 * A version 7 UUID (RFC 9562): 48 bits of Unix milliseconds, then a 12-bit counter so that ids made in
 * one millisecond keep their order, then 62 random bits.
 */
export function newId(): string {
  if (used === pool.length) {
    randomFillSync(pool);
    used = 0;
  }
  const bytes = pool.slice(used, used + 16);
  used += 16;
  const now = Date.now();
  if (now > lastMillis) {
    lastMillis = now;
    counter = 0;
  } else {
    counter += 1;
    if (counter > 0xfff) {
      lastMillis += 1; // borrow from the next millisecond rather than repeat a counter
      counter = 0;
    }
  }
  const view = new DataView(bytes.buffer);
  view.setUint16(0, Math.floor(lastMillis / 0x1_0000_0000));
  view.setUint32(2, lastMillis % 0x1_0000_0000);
  view.setUint16(6, 0x7000 | counter);
  view.setUint8(8, (view.getUint8(8) & 0x3f) | 0x80);
  const hex = Buffer.from(bytes).toString('hex');
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-${hex.slice(12, 16)}-${hex.slice(16, 20)}-${hex.slice(20)}`;
}

const UUID = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/;

export function isId(value: unknown): value is string {
  return typeof value === 'string' && UUID.test(value);
}
