import type { Reason } from '#lib/dentition';
import type { KnownFee } from '../db/fee-versions.js';

interface Wanted {
  readonly feeCode: string | null;
  readonly templateId: string;
  readonly reason: Reason;
}

/** The fee of a code; without one that of the template for the reason, else for any reason. */
export function findFee(known: readonly KnownFee[], wanted: Wanted): KnownFee | undefined {
  if (wanted.feeCode !== null) {
    const code = wanted.feeCode.trim().toLowerCase();
    return known.find((fee) => fee.code.toLowerCase() === code);
  }
  const own = known.filter((fee) => fee.active && fee.templateId === wanted.templateId);
  return own.find((fee) => fee.reason === wanted.reason) ?? own.find((fee) => fee.reason === null);
}
