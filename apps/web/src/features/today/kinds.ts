import type { Shape } from '../../api/client.js';

export type AlertKind = Shape<'AlertDto'>['kind'];

/** The most urgent first, as the service ranks them. */
export const ALERT_KINDS = [
  'recalled lot on hand',
  'expired on shelf',
  'opened too long',
  'open shortfall',
  'runs out before delivery',
  'overdue order',
  'below reorder point',
  'expires within N days',
] as const satisfies readonly AlertKind[];
