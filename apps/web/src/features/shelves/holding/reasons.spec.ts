import { describe, expect, it } from '@jest/globals';
import { holdingWith } from './holding.fixture.js';
import { likelyReason } from './reasons.js';

const TODAY = '2026-05-04';
const lot = (labelExpiry: string | null) => ({ ...holdingWith().lot, labelExpiry });

describe('the reason that a holding suggests', () => {
  it('is none while it can be used', () => {
    expect(likelyReason(holdingWith(), TODAY)).toBe('');
  });

  it('is the recall', () => {
    expect(likelyReason(holdingWith({ status: 'recalled' }), TODAY)).toBe('recall');
  });

  it('tells the label from the time after opening', () => {
    const expired = { status: 'expired' as const };
    const open = { ...expired, openedOn: '2025-10-01' };
    expect(likelyReason(holdingWith({ ...expired, lot: lot('2026-05-03') }), TODAY)).toBe(
      'expired',
    );
    expect(likelyReason(holdingWith({ ...open, lot: lot('2026-05-03') }), TODAY)).toBe('expired');
    expect(likelyReason(holdingWith({ ...open, lot: lot('2027-05-03') }), TODAY)).toBe(
      'after-opening limit',
    );
    expect(likelyReason(holdingWith({ ...open, lot: lot(null) }), TODAY)).toBe(
      'after-opening limit',
    );
  });
});
