import type { Tone } from '../../../ui/status-mark.js';
import type { Holding } from '../api/list-holdings.js';

export const STATUS_TONES: Readonly<Record<Holding['status'], Tone>> = {
  usable: 'good',
  expired: 'danger',
  quarantined: 'caution',
  recalled: 'danger',
  'not yet received': 'quiet',
  'opened later': 'quiet',
};
