/** What the audit trail speaks of. */
export const AUDIT_KINDS = [
  'consumable',
  'presentation',
  'supplier',
  'location',
  'procedure-template',
  'person',
  'practice',
  'token',
] as const;
