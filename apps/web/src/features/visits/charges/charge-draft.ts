import { formatMoney, moneyFromMicro } from '#lib/measure';
import type { Shape } from '../../../api/client.js';
import { asDecimal } from '../../../ui/decimal-text.js';
import { micro } from '../../../ui/drawn.js';

/** What is said of one restoration, as it is typed. */
export interface ChargeRow {
  readonly restorationId: string;
  readonly feeCode: string;
  readonly fee: string;
  readonly planId: string;
  readonly planPays: string;
  readonly patientPays: string;
  readonly writeOff: string;
  readonly deductibleUsed: string;
  /** The split by the terms of the plan, as `splitKey` says it; '' when nobody asked them. */
  readonly workedOut: string;
}

export type ChargeField = Exclude<keyof ChargeRow, 'restorationId' | 'workedOut'>;

type Typed = (decimal: string) => string;
type NewCharge = Shape<'NewChargeDto'>;

export const SHARES = ['planPays', 'patientPays', 'writeOff'] as const;
const AMOUNTS = ['fee', ...SHARES, 'deductibleUsed'] as const;

/** Millionths; an empty field is 0; undefined when it is not an amount of money. */
function amountOf(typed: string): bigint | undefined {
  if (typed.trim() === '') return 0n;
  const decimal = asDecimal(typed);
  return decimal === undefined || decimal.startsWith('-') ? undefined : micro(decimal);
}

/** Fee, plan and the four amounts in one text, however they were typed. */
export function splitKey(row: ChargeRow): string {
  const amounts = AMOUNTS.map((name) => amountOf(row[name])?.toString() ?? row[name]);
  return JSON.stringify([row.feeCode, row.planId, ...amounts]);
}

interface Recorded {
  readonly restorationId: string;
  readonly feeCode: string | null;
  readonly fee: string;
  readonly plan: { readonly id: string } | null;
  readonly planPays: string;
  readonly patientPays: string;
  readonly writeOff: string;
  readonly deductibleUsed: string;
  readonly stated: boolean;
}

/** A charge as the service says it, to be typed over. */
export function rowOf(of: Recorded, typed: Typed): ChargeRow {
  const unlessZero = (amount: string) => (micro(amount) === 0n ? '' : typed(amount));
  const row: ChargeRow = {
    restorationId: of.restorationId,
    feeCode: of.feeCode ?? '',
    fee: typed(of.fee),
    planId: of.plan?.id ?? '',
    planPays: unlessZero(of.planPays),
    patientPays: unlessZero(of.patientPays),
    writeOff: unlessZero(of.writeOff),
    deductibleUsed: unlessZero(of.deductibleUsed),
    workedOut: '',
  };
  return of.stated ? row : { ...row, workedOut: splitKey(row) };
}

interface ListedFee {
  readonly code: string;
  readonly current: { readonly fee: string } | null;
}

/** Where nothing was recorded: the fee list, and no plan, so that the patient pays all of it. */
export function proposedRow(
  restorationId: string,
  listed: ListedFee | undefined,
  typed: Typed,
): ChargeRow {
  const price = listed?.current ? typed(listed.current.fee) : '';
  const none = { planId: '', planPays: '', writeOff: '', deductibleUsed: '', workedOut: '' };
  const feeCode = price === '' ? '' : (listed?.code ?? '');
  return { restorationId, feeCode, fee: price, patientPays: price, ...none };
}

/** What is left to pay of the fee after the write-off; as it was where that is no amount. */
function followed(row: ChargeRow, typed: Typed): ChargeRow {
  const [fee, writeOff] = [amountOf(row.fee), amountOf(row.writeOff)];
  if (fee === undefined || writeOff === undefined || writeOff > fee) return row;
  const rest = row.fee.trim() === '' ? '' : typed(formatMoney(moneyFromMicro(fee - writeOff)));
  return { ...row, patientPays: rest };
}

/**
 * A row after one field was typed. Without a plan the patient pays what is not written off; another
 * plan says something else, so what the one before said goes.
 */
export function withField(
  row: ChargeRow,
  field: ChargeField,
  value: string,
  typed: Typed,
): ChargeRow {
  const next = { ...row, [field]: value };
  if (field === 'planId') {
    const bare = { ...next, planPays: '', writeOff: '', deductibleUsed: '' };
    return value === '' ? followed(bare, typed) : { ...bare, patientPays: '' };
  }
  const leads = field === 'fee' || field === 'writeOff';
  return leads && row.planId === '' ? followed(next, typed) : next;
}

/** What the three come to, and by how much that is more (or less) than the fee. */
export function sumOf(row: ChargeRow): { readonly sum: string; readonly over: string } | undefined {
  const [fee, ...shares] = [row.fee, ...SHARES.map((name) => row[name])].map(amountOf);
  if (fee === undefined) return undefined;
  let sum = 0n;
  for (const share of shares) {
    if (share === undefined) return undefined;
    sum += share;
  }
  const words = (amount: bigint) => formatMoney(moneyFromMicro(amount));
  return { sum: words(sum), over: words(sum - fee) };
}

/** The fields of a row that hold no amount of money. */
export function notAmounts(row: ChargeRow): ChargeField[] {
  return AMOUNTS.filter((name) => amountOf(row[name]) === undefined);
}

const decimal = (typed: string) => asDecimal(typed.trim() === '' ? '0' : typed) ?? typed;

/** What the service is asked to work out of a row. */
export function askedOf(row: ChargeRow): NewCharge {
  const { restorationId, feeCode, planId } = row;
  return {
    restorationId,
    fee: decimal(row.fee),
    ...(feeCode === '' ? {} : { feeCode }),
    ...(planId === '' ? {} : { planId }),
  };
}

/** What is recorded of a row: amounts only where a person says them, and not the plan's terms. */
export function chargeOf(row: ChargeRow): NewCharge {
  const isWorkedOut = row.workedOut !== '' && row.workedOut === splitKey(row);
  const isPatients = row.planId === '' && amountOf(row.writeOff) === 0n;
  if (isWorkedOut || (isPatients && sumOf(row)?.over === '0.00')) return askedOf(row);
  return {
    ...askedOf(row),
    planPays: decimal(row.planPays),
    patientPays: decimal(row.patientPays),
    writeOff: decimal(row.writeOff),
    deductibleUsed: decimal(row.deductibleUsed),
  };
}

/**
 * The positions of the rows that say something new: recorded ones that were changed, and others that
 * have a fee.
 */
export function positionsToSend(
  rows: readonly ChargeRow[],
  before: readonly { readonly row: ChargeRow; readonly isRecorded: boolean }[],
): number[] {
  return rows.flatMap((row, i) => {
    const old = before[i];
    if (!old?.isRecorded) return row.fee.trim() === '' ? [] : [i];
    return splitKey(row) === splitKey(old.row) ? [] : [i];
  });
}
