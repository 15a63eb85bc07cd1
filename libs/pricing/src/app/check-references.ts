import { type Tx, unknownReference } from '#lib/platform';

export async function checkTemplate(tx: Tx, templateId: string | null): Promise<void> {
  if (templateId === null) return;
  const rows = await tx.query('SELECT id FROM procedure_templates WHERE id = $1', [templateId]);
  if (rows.length === 0) throw unknownReference('templateId', 'procedure template');
}

export async function checkFee(tx: Tx, feeId: string | null): Promise<void> {
  if (feeId === null) return;
  const rows = await tx.query('SELECT id FROM fees WHERE id = $1', [feeId]);
  if (rows.length === 0) throw unknownReference('feeId', 'fee');
}
