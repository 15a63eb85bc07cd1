import { Injectable } from '@nestjs/common';
import { recordAudit } from '#lib/access';
import { type Actor, type Tx, UnitOfWork } from '#lib/platform';
import { refuseCatalogue } from '../catalogue.refusals.js';
import { presentationWasReceived } from '../db/delivered.js';
import { PresentationEntity } from '../db/presentation.entity.js';
import { refusingTaken } from '../db/taken.js';
import { type Changes, changesBetween } from '../domain/changes.js';
import type { Dispensing } from '../domain/presentation-rules.js';
import { checkSupplier, refuseUnfitPacking, stockUnitOf } from './create-presentation.js';
import { findToChange } from './find.js';
import { PRESENTATION_NAMES } from './taken-names.js';
import { changedText, plainMoney, plainQuantity } from './texts.js';
import { type PresentationView, presentationView } from './views.js';

export interface PresentationChanges {
  readonly supplierId?: string | null;
  readonly name?: string;
  readonly dispensing?: Dispensing;
  readonly containersPerPack?: number;
  readonly contentPerContainer?: string;
  readonly deviceIdentifier?: string | null;
  readonly articleCode?: string | null;
  readonly listPrice?: string | null;
  readonly active?: boolean;
}

/** What may not change once a pack was received: containers on the shelf were made from it. */
const FIXED = ['dispensing', 'contentPerContainer'] as const;

@Injectable()
export class ChangePresentation {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, id: string, command: PresentationChanges): Promise<PresentationView> {
    return this.uow.run(actor.practiceId, async (tx) => {
      const before = await findToChange(tx, PresentationEntity, id, 'presentation');
      const after = changedRow(before, command);
      const changes = changesBetween(presentationView(before), presentationView(after));
      if (!changes) return presentationView(before);
      await check(tx, after, changes);
      await refusingTaken(PRESENTATION_NAMES, () =>
        tx.manager.update(PresentationEntity, { id }, after),
      );
      await recordAudit(tx, actor, {
        action: 'presentation.changed',
        subjectKind: 'presentation',
        subjectId: id,
        details: changes,
      });
      return presentationView(after);
    });
  }
}

function changedRow(before: PresentationEntity, command: PresentationChanges): PresentationEntity {
  const { supplierId, listPrice } = command;
  return {
    ...before,
    supplierId: supplierId === undefined ? before.supplierId : supplierId,
    name: command.name?.trim() ?? before.name,
    dispensing: command.dispensing ?? before.dispensing,
    containersPerPack: command.containersPerPack ?? before.containersPerPack,
    contentPerContainer: plainQuantity(command.contentPerContainer) ?? before.contentPerContainer,
    deviceIdentifier: changedText(command.deviceIdentifier, before.deviceIdentifier),
    articleCode: changedText(command.articleCode, before.articleCode),
    listPrice: listPrice === undefined ? before.listPrice : plainMoney(listPrice),
    active: command.active ?? before.active,
  };
}

async function check(tx: Tx, after: PresentationEntity, changes: Changes): Promise<void> {
  const touched = FIXED.filter((field) => field in changes);
  if (touched.length > 0) {
    if (await presentationWasReceived(tx, after.id)) {
      throw refuseCatalogue(
        'presentation_fixed',
        'Packs of this presentation were already received. Enter a new presentation instead.',
        touched.map((field) => ({ field, message: 'cannot change after the first delivery' })),
      );
    }
    refuseUnfitPacking(await stockUnitOf(tx, after.consumableId), after);
  }
  if ('supplierId' in changes) await checkSupplier(tx, after.supplierId);
}
