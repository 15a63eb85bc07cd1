import { useText } from '../../text/text-provider.js';
import { StatusMark, type Tone } from '../../ui/status-mark.js';
import type { LotStatus } from './api/set-lot-status.js';
import type { TracedUse } from './api/trace-lot.js';

const STATUS: Readonly<Record<LotStatus, Tone>> = {
  released: 'good',
  quarantined: 'caution',
  recalled: 'danger',
};

export function LotStatusMark({ status }: { readonly status: LotStatus }) {
  const t = useText();
  return <StatusMark tone={STATUS[status]}>{t.trace.statuses[status]}</StatusMark>;
}

export type Sureness = TracedUse['sureness'];

/** The surest first. */
export const SURENESS = [
  'scanned',
  'open container',
  'assumed',
  'not stated',
] as const satisfies Sureness[];

const SURE: Readonly<Record<Sureness, Tone>> = {
  scanned: 'good',
  'open container': 'accent',
  assumed: 'caution',
  'not stated': 'quiet',
};

/** How sure it is that this lot was used. */
export function SurenessMark({ sureness }: { readonly sureness: Sureness }) {
  const t = useText();
  return <StatusMark tone={SURE[sureness]}>{t.trace.sureness[sureness]}</StatusMark>;
}
