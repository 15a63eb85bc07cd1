import { Injectable } from '@nestjs/common';
import { recordAudit } from '#lib/access';
import { quantity, type StockUnit } from '#lib/measure';
import { type Actor, type Tx, UnitOfWork } from '#lib/platform';
import { refuseCatalogue } from '../catalogue.refusals.js';
import { ConsumableEntity } from '../db/consumable.entity.js';
import { consumableWasReceived } from '../db/delivered.js';
import { PresentationEntity } from '../db/presentation.entity.js';
import { refusingTaken } from '../db/taken.js';
import { changesBetween } from '../domain/changes.js';
import { packingProblems } from '../domain/presentation-rules.js';
import { type ConsumableAttributes, refuseUnfitReorder } from './create-consumable.js';
import { findToChange } from './find.js';
import { refuseMisfits } from './refuse-misfits.js';
import { CONSUMABLE_NAMES } from './taken-names.js';
import { changedText, plainQuantity } from './texts.js';
import { type ConsumableView, consumableView } from './views.js';

export interface ConsumableChanges extends ConsumableAttributes {
  readonly name?: string;
  readonly category?: string;
  readonly stockUnit?: StockUnit;
  readonly active?: boolean;
}

@Injectable()
export class ChangeConsumable {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, id: string, command: ConsumableChanges): Promise<ConsumableView> {
    return this.uow.run(actor.practiceId, async (tx) => {
      const before = await findToChange(tx, ConsumableEntity, id, 'consumable');
      const after = changedRow(before, command);
      const changes = changesBetween(consumableView(before), consumableView(after));
      if (!changes) return consumableView(before);
      refuseUnfitReorder(after);
      if (after.stockUnit !== before.stockUnit) await checkStockUnit(tx, after);
      await refusingTaken(CONSUMABLE_NAMES, () =>
        tx.manager.update(ConsumableEntity, { id }, after),
      );
      await recordAudit(tx, actor, {
        action: 'consumable.changed',
        subjectKind: 'consumable',
        subjectId: id,
        details: changes,
      });
      return consumableView(after);
    });
  }
}

function changedRow(before: ConsumableEntity, command: ConsumableChanges): ConsumableEntity {
  const figure = (text: string | null | undefined, was: string | null) =>
    text === undefined ? was : plainQuantity(text);
  const life = command.lifeAfterOpening;
  return {
    ...before,
    name: command.name?.trim() ?? before.name,
    category: command.category?.trim() ?? before.category,
    stockUnit: command.stockUnit ?? before.stockUnit,
    shade: changedText(command.shade, before.shade),
    opacity: changedText(command.opacity, before.opacity),
    viscosity: changedText(command.viscosity, before.viscosity),
    size: changedText(command.size, before.size),
    grit: changedText(command.grit, before.grit),
    lifeAfterOpening: life === undefined ? before.lifeAfterOpening : (life?.value ?? null),
    lifeAfterOpeningUnit: life === undefined ? before.lifeAfterOpeningUnit : (life?.unit ?? null),
    reorderAt: figure(command.reorderAt, before.reorderAt),
    reorderUpTo: figure(command.reorderUpTo, before.reorderUpTo),
    densityGPerCm3: figure(command.densityGPerCm3, before.densityGPerCm3),
    active: command.active ?? before.active,
  };
}

/** The unit counts every gram and piece in the book, so it may change only before the first one. */
async function checkStockUnit(tx: Tx, row: ConsumableEntity): Promise<void> {
  if (await consumableWasReceived(tx, row.id)) {
    throw refuseCatalogue(
      'stock_unit_fixed',
      'Stock of this consumable was already received. Enter a new consumable for another unit.',
      [{ field: 'stockUnit', message: 'cannot change after the first delivery' }],
    );
  }
  const presentations = await tx.manager.findBy(PresentationEntity, { consumableId: row.id });
  for (const { name, dispensing, contentPerContainer } of presentations) {
    const content = quantity(contentPerContainer);
    const { stockUnit } = row;
    const problems = packingProblems({ stockUnit, dispensing, contentPerContainer: content });
    if (problems.length === 0) continue;
    refuseMisfits([{ field: 'stockUnit', message: `does not fit the presentation ${name}` }]);
  }
}
