import { recordAudit } from '#lib/access';
import type { Actor, Tx } from '#lib/platform';

/** Writes a change of the planning into the audit trail. */
export function recordChange(
  tx: Tx,
  actor: Actor,
  action: string,
  subject: { readonly kind: string; readonly id: string },
  details: Readonly<Record<string, unknown>>,
): Promise<void> {
  const { kind: subjectKind, id: subjectId } = subject;
  return recordAudit(tx, actor, { action, subjectKind, subjectId, details });
}
