import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { alertChanges } from './alert-changes.js';

const ids = fc.uniqueArray(fc.constantFrom('a', 'b', 'c', 'd', 'e', 'f'));
const episodes = (open: readonly string[]) =>
  open.map((alertId) => ({ id: `e-${alertId}`, alertId }));

describe('what the data opened and closed', () => {
  it('brings the open ones to what is there now, whatever was open before', () => {
    fc.assert(
      fc.property(ids, ids, (before, now) => {
        const { opened, closed } = alertChanges(
          now.map((id) => ({ id })),
          episodes(before),
        );
        const after = new Set<string>(before);
        for (const { alertId } of closed) expect(after.delete(alertId)).toBe(true);
        for (const { id } of opened) {
          expect(after.has(id)).toBe(false);
          after.add(id);
        }
        expect([...after].sort()).toEqual([...now].sort());
      }),
    );
  });

  it('is nothing when nothing changed', () => {
    fc.assert(
      fc.property(ids, (now) => {
        const same = alertChanges(
          now.map((id) => ({ id })),
          episodes(now),
        );
        expect(same).toEqual({ opened: [], closed: [] });
      }),
    );
  });
});
