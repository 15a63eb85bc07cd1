import type { Tone } from '../../ui/status-mark.js';
import type { AlertKind } from './kinds.js';

export const TONES: Readonly<Record<AlertKind, Tone>> = {
  'recalled lot on hand': 'danger',
  'expired on shelf': 'danger',
  'opened too long': 'danger',
  'open shortfall': 'caution',
  'runs out before delivery': 'caution',
  'overdue order': 'caution',
  'below reorder point': 'caution',
  'expires within N days': 'quiet',
};
