import { describe, expect, it } from '@jest/globals';
import { KeyKeeper } from './idempotency.js';

describe('the key of a booking', () => {
  it('is the same for the same body until the booking is answered', () => {
    const keys = new KeyKeeper();
    const first = keys.keyFor({ packs: 1 });
    expect(first).toMatch(/^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/);
    expect(keys.keyFor({ packs: 1 })).toBe(first);
    const other = keys.keyFor({ packs: 2 });
    expect(other).not.toBe(first);
    keys.forget();
    expect(keys.keyFor({ packs: 2 })).not.toBe(other);
  });
});
