import type { Shape } from '../../../api/client.js';
import type { Holding } from '../api/list-holdings.js';

export type WasteReason = Shape<'WriteOffDto'>['reason'];

export const WASTE_REASONS = [
  'expired',
  'after-opening limit',
  'contaminated',
  'wrong shade opened',
  'residue',
  'damaged',
  'temperature',
  'recall',
  'sample',
] as const satisfies readonly WasteReason[];

/** The reason that the state of a holding suggests; '' when it suggests none. */
export function likelyReason(holding: Holding, today: string): WasteReason | '' {
  const { status, openedOn, lot } = holding;
  if (status === 'recalled') return 'recall';
  if (status !== 'expired') return '';
  const label = lot.labelExpiry;
  const labelOver = label !== null && label < today;
  return openedOn !== null && !labelOver ? 'after-opening limit' : 'expired';
}
