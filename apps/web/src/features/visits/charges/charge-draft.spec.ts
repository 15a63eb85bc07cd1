import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import {
  type ChargeRow,
  chargeOf,
  positionsToSend,
  proposedRow,
  rowOf,
  sumOf,
  withField,
} from './charge-draft.js';
import { fittingFees, linkedFee } from './fee-choice.js';

/** As German types it. */
const typed = (decimal: string) => decimal.replace('.', ',');
const listed = { code: 'FRONT-1', current: { fee: '250.00' } };
const empty = proposedRow('r1', undefined, typed);
const recorded = {
  ...{ restorationId: 'r1', feeCode: 'FRONT-1', fee: '250.00', plan: { id: 'meadow' } },
  ...{ planPays: '104.00', patientPays: '76.00', writeOff: '70.00', deductibleUsed: '50.00' },
};

describe('what is proposed', () => {
  it('is the fee of the list, paid by the patient, worked out by the service', () => {
    const row = proposedRow('r1', listed, typed);
    expect(row).toMatchObject({ fee: '250,00', patientPays: '250,00', planId: '', planPays: '' });
    expect(chargeOf(row)).toEqual({ restorationId: 'r1', feeCode: 'FRONT-1', fee: '250.00' });
  });

  it('is nothing where the list has no fee of that day, and then nothing is sent', () => {
    const row = proposedRow('r1', { code: 'LATER', current: null }, typed);
    expect([row.fee, row.feeCode]).toEqual(['', '']);
    expect(positionsToSend([row], [{ row, isRecorded: false }])).toEqual([]);
  });
});

describe('typing', () => {
  it('without a plan leaves the patient what is not written off', () => {
    const row = withField(proposedRow('r1', listed, typed), 'writeOff', '25,5', typed);
    expect(row.patientPays).toBe('224,50');
    expect(withField(row, 'fee', '300', typed).patientPays).toBe('274,50');
    expect(withField(row, 'writeOff', '301', typed).patientPays).toBe('224,50');
  });

  it('another plan takes away what the one before said', () => {
    const row = withField(rowOf({ ...recorded, stated: true }, typed), 'planId', 'hill', typed);
    expect(row).toMatchObject({ planPays: '', patientPays: '', writeOff: '', deductibleUsed: '' });
    expect(withField(row, 'planId', '', typed).patientPays).toBe('250,00');
  });

  it('shows what the three come to, and by how much that is not the fee', () => {
    const row = rowOf({ ...recorded, stated: true }, typed);
    expect(sumOf(row)).toEqual({ sum: '250.00', over: '0.00' });
    expect(sumOf({ ...row, writeOff: '69,99' })).toEqual({ sum: '249.99', over: '-0.01' });
    expect(sumOf({ ...row, planPays: '-1' })).toBeUndefined();
  });
});

describe('what is recorded', () => {
  it('is the terms as long as nobody typed over what they gave', () => {
    const row = rowOf({ ...recorded, stated: false }, typed);
    const asked = { restorationId: 'r1', feeCode: 'FRONT-1', fee: '250,00', planId: 'meadow' };
    expect(chargeOf(row)).toEqual({ ...asked, fee: '250.00' });
    expect(chargeOf({ ...row, planPays: '104' })).toEqual({ ...asked, fee: '250.00' });
    const stated = chargeOf({ ...row, planPays: '100', patientPays: '80' });
    expect(stated).toMatchObject({ planPays: '100', patientPays: '80', writeOff: '70.00' });
  });

  it('is only what says something new', () => {
    const row = rowOf({ ...recorded, stated: true }, typed);
    const before = [
      { row, isRecorded: true },
      { row: empty, isRecorded: false },
    ];
    expect(positionsToSend([{ ...row, fee: '250' }, empty], before)).toEqual([]);
    expect(positionsToSend([row, { ...empty, fee: '10' }], before)).toEqual([1]);
    expect(positionsToSend([{ ...row, writeOff: '71' }, empty], before)).toEqual([0]);
  });

  it('states amounts that come to the fee, whenever the sum says so', () => {
    const amount = fc.bigInt({ min: 0n, max: 99_999n });
    const text = (cents: bigint) => `${cents / 100n},${(cents % 100n).toString().padStart(2, '0')}`;
    fc.assert(
      fc.property(amount, amount, amount, amount, (fee, plan, patient, off) => {
        const row: ChargeRow = {
          ...{ ...empty, fee: text(fee), planId: 'meadow', planPays: text(plan) },
          ...{ patientPays: text(patient), writeOff: text(off) },
        };
        expect(sumOf(row)?.over === '0.00').toBe(plan + patient + off === fee);
        const body = chargeOf(row);
        const cents = (decimal = '') => BigInt(decimal.replace('.', ''));
        const { planPays, patientPays, writeOff } = body;
        const stated = [planPays, patientPays, writeOff].map((each) => cents(each ?? ''));
        expect(stated).toEqual([plan, patient, off]);
      }),
      { numRuns: 50 },
    );
  });
});

describe('the fees that are offered', () => {
  const fee = (code: string, templateId: string | null, reason: string | null) => ({
    ...{ code, templateId, reason, current: { fee: '1.00' } },
  });
  const fees = [
    fee('DECAY', 'front', 'decay'),
    fee('ANY', 'front', null),
    fee('BACK', 'back', null),
    fee('CODE', null, null),
    fee('CODE-DECAY', null, 'decay'),
  ];

  it('are never those of another reason: cosmetic work is not put on an insured line', () => {
    const cosmetic = { template: { id: 'front' }, reason: 'cosmetic' };
    expect(fittingFees(fees, cosmetic).map(({ code }) => code)).toEqual(['ANY', 'CODE']);
    expect(linkedFee(fees, cosmetic)?.code).toBe('ANY');
    expect(linkedFee(fees, { ...cosmetic, reason: 'decay' })?.code).toBe('DECAY');
    expect(linkedFee(fees, { template: { id: 'other' }, reason: 'decay' })).toBeUndefined();
  });
});
