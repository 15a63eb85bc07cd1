import { Injectable } from '@nestjs/common';
import { recordAudits } from '#lib/access';
import { formatQuantity, type StockUnit } from '#lib/measure';
import { type Actor, type Tx, UnitOfWork, unknownReference } from '#lib/platform';
import { PresentationEntity } from '../db/presentation.entity.js';
import {
  type KitParts,
  loadPresentationParts,
  replacePresentationParts,
  type StoredPart,
} from '../db/presentation-parts.js';
import { ownShare, type PartInput, partProblems } from '../domain/part-rules.js';
import { findNamed, findToChange } from './find.js';
import { refuseMisfits } from './refuse-misfits.js';

export interface PartsView {
  /** What is left of the price for the pack's own content. */
  readonly ownSharePercent: string;
  readonly parts: readonly StoredPart[];
}

/** What else is in a pack: the parts of a kit, or the other consumables of a mixed box. */
@Injectable()
export class PresentationParts {
  constructor(private readonly uow: UnitOfWork) {}

  async get(actor: Actor, id: string): Promise<PartsView> {
    return this.uow.read(actor.practiceId, async (tx) => {
      await findNamed(tx, PresentationEntity, id, 'presentation');
      return readParts(tx, id);
    });
  }

  /** Sets all parts at once; what was received before keeps what it was received as. */
  async set(actor: Actor, id: string, parts: readonly PartInput[]): Promise<PartsView> {
    return this.uow.run(actor.practiceId, async (tx) => {
      const own = await findToChange(tx, PresentationEntity, id, 'presentation');
      await check(tx, own, parts);
      await setPresentationParts(tx, actor, [{ presentationId: id, parts }]);
      return readParts(tx, id);
    });
  }
}

/**
 * Sets all parts of several packs in the caller's transaction, with their entries in the trail. The
 * caller holds the packs, and has checked the parts by `partProblems`.
 */
export async function setPresentationParts(
  tx: Tx,
  actor: Actor,
  kits: readonly KitParts[],
): Promise<void> {
  const ids = kits.map((kit) => kit.presentationId);
  const before = await loadPresentationParts(tx, ids);
  await replacePresentationParts(tx, kits);
  const after = await loadPresentationParts(tx, ids);
  const entries = ids.map((id) => ({
    action: 'presentation.parts set',
    subjectKind: 'presentation',
    subjectId: id,
    details: { parts: { was: before.get(id) ?? [], is: after.get(id) ?? [] } },
  }));
  await recordAudits(tx, actor, entries);
}

async function readParts(tx: Tx, id: string): Promise<PartsView> {
  const parts = (await loadPresentationParts(tx, [id])).get(id) ?? [];
  return { ownSharePercent: formatQuantity(ownShare(parts)), parts };
}

async function check(tx: Tx, own: PresentationEntity, parts: readonly PartInput[]): Promise<void> {
  const rows = await tx.query<{ id: string; stock_unit: StockUnit }>(
    'SELECT id, stock_unit FROM consumables WHERE id = ANY($1::uuid[])',
    [parts.map((part) => part.consumableId)],
  );
  const units = new Map(rows.map((row) => [row.id, row.stock_unit]));
  const unitOf = (id: string): StockUnit => {
    const unit = units.get(id);
    if (unit) return unit;
    const at = parts.findIndex((part) => part.consumableId === id);
    throw unknownReference(`parts[${at}].consumableId`, 'consumable');
  };
  refuseMisfits(partProblems({ ownConsumableId: own.consumableId, unitOf }, parts));
}
