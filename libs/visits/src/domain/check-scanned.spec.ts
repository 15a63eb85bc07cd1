import { describe, expect, it } from '@jest/globals';
import { money, quantity } from '#lib/measure';
import type { Candidate } from '#lib/stock';
import { checkScanned, type ScannedEntry, type ScannedLot } from './check-scanned.js';

const lot: ScannedLot = {
  id: 'lot',
  consumable_id: 'bond',
  status: 'released',
  expires_on: '2027-01-31',
  received_on: '2026-01-05',
};

/** An opened bottle of the lot. */
function bottle(changes: Partial<Candidate> = {}): Candidate {
  return {
    holdingId: 'bottle',
    layerId: 'layer',
    consumableId: 'bond',
    lotId: 'lot',
    lotNumber: 'A-1',
    lotStatus: 'released',
    locationId: 'room',
    distance: 0,
    receivedOn: '2026-01-05',
    labelExpiry: '2027-01-31',
    openedOn: '2026-03-02',
    useBy: '2026-09-02',
    dispensing: 'multi-use',
    content: quantity('5'),
    onHand: quantity('3'),
    received: quantity('5'),
    landedCost: money('110'),
    outQuantity: quantity('2'),
    outCost: money('44'),
    ...changes,
  };
}

const sealed = (changes: Partial<Candidate> = {}) =>
  bottle({ holdingId: 'sealed', openedOn: null, useBy: null, ...changes });

interface Scan {
  readonly entry?: Partial<ScannedEntry>;
  readonly day?: string;
  readonly of?: Partial<ScannedLot>;
  readonly candidates?: readonly Candidate[];
  readonly used?: readonly string[];
}

function problem(scan: Scan): string | undefined {
  const found = checkScanned([{ lotId: 'lot', ...scan.entry }], {
    day: scan.day ?? '2026-05-04',
    lots: new Map([['lot', { ...lot, ...scan.of }]]),
    candidates: scan.candidates ?? [bottle()],
    used: new Set(scan.used ?? ['bond']),
  });
  if (!found) return undefined;
  if ('field' in found) return `${found.code} ${found.field}`;
  return `${found.code} ${found.error.field} ${found.error.message}`;
}

const unusable = (field: string, why: string, day = '2026-05-04') =>
  `lot_not_usable scanned[0].${field} is ${why} on ${day} and may not be used`;

describe('a scanned lot', () => {
  it.each<[string, Scan]>([
    ['of which there is some', {}],
    ['with the container that was scanned', { entry: { holdingId: 'bottle' } }],
    ['on its last day', { day: '2027-01-31', candidates: [sealed()] }],
    ['on the day it was received', { day: '2026-01-05', candidates: [sealed()] }],
    ['without any expiry', { of: { expires_on: null } }],
    ['of which the book has nothing left', { candidates: [] }],
    [
      'with one container too old and another sealed',
      {
        day: '2026-10-01',
        candidates: [bottle(), sealed()],
      },
    ],
    // nothing left of it on that day: a shortfall of this lot, no refusal
    ['that was opened after the day', { day: '2026-02-01' }],
    ['of which more came after the day', { candidates: [sealed({ receivedOn: '2026-06-01' })] }],
    [
      'too old or opened later',
      {
        day: '2026-10-01',
        candidates: [bottle(), bottle({ openedOn: '2026-11-01', useBy: '2027-01-31' })],
      },
    ],
  ])('%s may be used', (_, scan) => {
    expect(problem(scan)).toBeUndefined();
  });

  it.each<[string, Scan, string]>([
    ['unknown', { entry: { lotId: 'none' } }, 'unknown_lot scanned[0].lotId'],
    [
      'not of its container',
      { entry: { holdingId: 'another' } },
      'unknown_holding scanned[0].holdingId',
    ],
    ['recalled', { of: { status: 'recalled' } }, unusable('lotId', 'recalled')],
    ['quarantined', { of: { status: 'quarantined' } }, unusable('lotId', 'quarantined')],
    ['expired', { day: '2027-02-01' }, unusable('lotId', 'expired', '2027-02-01')],
    [
      'not yet received',
      { day: '2026-01-04' },
      unusable('lotId', 'not yet received', '2026-01-04'),
    ],
    ['never received', { of: { received_on: null } }, unusable('lotId', 'not yet received')],
    [
      'opened too long ago, all that is left of it',
      { day: '2026-09-03' },
      unusable('lotId', 'expired', '2026-09-03'),
    ],
    [
      'in a container opened too long ago',
      { day: '2026-09-03', entry: { holdingId: 'bottle' }, candidates: [bottle(), sealed()] },
      unusable('holdingId', 'expired', '2026-09-03'),
    ],
    [
      'in a container opened later',
      { day: '2026-02-01', entry: { holdingId: 'bottle' } },
      unusable('holdingId', 'opened later', '2026-02-01'),
    ],
  ])('that is %s may not', (_, scan, expected) => {
    expect(problem(scan)).toBe(expected);
  });

  it.each(['recalled', 'quarantined'] as const)(
    'that was %s between looking it up and locking its stock may not',
    (lotStatus) => {
      const candidates = [bottle({ lotStatus })];
      expect(problem({ candidates })).toBe(unusable('lotId', lotStatus));
      const entry = { holdingId: 'bottle' };
      expect(problem({ candidates, entry })).toBe(unusable('lotId', lotStatus));
    },
  );

  it('of something that the visit does not use is not needed', () => {
    expect(problem({ used: ['paste'] })).toBe(
      'lot_not_needed scanned[0].lotId is a lot of something that this visit does not use',
    );
  });

  it('is named by its place in the list', () => {
    const found = checkScanned([{ lotId: 'lot' }, { lotId: 'none' }], {
      day: '2026-05-04',
      lots: new Map([['lot', lot]]),
      candidates: [bottle()],
      used: new Set(['bond']),
    });
    expect(found).toEqual({ code: 'unknown_lot', field: 'scanned[1].lotId' });
  });
});
