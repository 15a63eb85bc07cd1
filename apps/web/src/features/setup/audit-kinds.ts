/** What the audit trail speaks of. */
export const AUDIT_KINDS = [
  'consumable',
  'presentation',
  'supplier',
  'location',
  'procedure-template',
  'fee',
  'fee-plan',
  'plan-balance',
  'cost-rate',
  'person',
  'practice',
  'token',
  'file',
] as const;
