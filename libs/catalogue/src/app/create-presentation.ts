import { Injectable } from '@nestjs/common';
import { quantity, type StockUnit } from '#lib/measure';
import { type Actor, newId, type Tx, UnitOfWork, unknownReference } from '#lib/platform';
import { ConsumableEntity } from '../db/consumable.entity.js';
import { PresentationEntity } from '../db/presentation.entity.js';
import { SupplierEntity } from '../db/supplier.entity.js';
import { type Dispensing, packingProblems } from '../domain/presentation-rules.js';
import { createOnce } from './create-once.js';
import { refuseMisfits } from './refuse-misfits.js';
import { PRESENTATION_NAMES } from './taken-names.js';
import { optionalText, plainMoney, plainQuantity } from './texts.js';
import { type PresentationView, presentationView } from './views.js';

export interface NewPresentation {
  readonly id?: string;
  readonly consumableId: string;
  readonly supplierId?: string | null;
  readonly name: string;
  readonly dispensing: Dispensing;
  readonly containersPerPack: number;
  /** Stock units in one container. */
  readonly contentPerContainer: string;
  readonly deviceIdentifier?: string | null;
  /** What the supplier calls it on orders. */
  readonly articleCode?: string | null;
  /** Of one pack. */
  readonly listPrice?: string | null;
}

@Injectable()
export class CreatePresentation {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, command: NewPresentation): Promise<PresentationView> {
    const row = newRow(actor, command);
    return this.uow.run(actor.practiceId, (tx) =>
      createOnce(tx, actor, {
        entity: PresentationEntity,
        row,
        sentId: command.id,
        kind: 'presentation',
        names: PRESENTATION_NAMES,
        toView: presentationView,
        check: async () => {
          refuseUnfitPacking(await stockUnitOf(tx, row.consumableId), row);
          await checkSupplier(tx, row.supplierId);
        },
      }),
    );
  }
}

function newRow(actor: Actor, command: NewPresentation): PresentationEntity {
  return {
    id: command.id ?? newId(),
    practiceId: actor.practiceId,
    consumableId: command.consumableId,
    supplierId: command.supplierId ?? null,
    name: command.name.trim(),
    dispensing: command.dispensing,
    containersPerPack: command.containersPerPack,
    contentPerContainer: plainQuantity(command.contentPerContainer) ?? '',
    deviceIdentifier: optionalText(command.deviceIdentifier),
    articleCode: optionalText(command.articleCode),
    listPrice: plainMoney(command.listPrice),
    active: true,
  };
}

/** The unit of the consumable, held so that it cannot change before this transaction ends. */
export async function stockUnitOf(tx: Tx, consumableId: string): Promise<StockUnit> {
  const consumable = await tx.manager
    .createQueryBuilder(ConsumableEntity, 'row')
    .setLock('pessimistic_read')
    .where('row.id = :consumableId', { consumableId })
    .getOne();
  if (!consumable) throw unknownReference('consumableId', 'consumable');
  return consumable.stockUnit;
}

export async function checkSupplier(tx: Tx, supplierId: string | null): Promise<void> {
  if (supplierId === null) return;
  const known = await tx.manager.existsBy(SupplierEntity, { id: supplierId });
  if (!known) throw unknownReference('supplierId', 'supplier');
}

export function refuseUnfitPacking(stockUnit: StockUnit, row: PresentationEntity): void {
  const { dispensing } = row;
  const contentPerContainer = quantity(row.contentPerContainer);
  refuseMisfits(packingProblems({ stockUnit, dispensing, contentPerContainer }));
}
