import { Injectable } from '@nestjs/common';
import type { StockUnit } from '#lib/measure';
import { quantity } from '#lib/measure';
import { type Actor, newId, UnitOfWork } from '#lib/platform';
import { ConsumableEntity } from '../db/consumable.entity.js';
import { reorderProblems } from '../domain/consumable-rules.js';
import type { LifeAfterOpening } from '../domain/effective-expiry.js';
import { createOnce } from './create-once.js';
import { refuseMisfits } from './refuse-misfits.js';
import { CONSUMABLE_NAMES } from './taken-names.js';
import { optionalText, plainQuantity } from './texts.js';
import { type ConsumableView, consumableView } from './views.js';

export interface ConsumableAttributes {
  readonly shade?: string | null;
  readonly opacity?: string | null;
  readonly viscosity?: string | null;
  readonly size?: string | null;
  readonly grit?: string | null;
  readonly lifeAfterOpening?: LifeAfterOpening | null;
  /** Stock units; order when this little is left. */
  readonly reorderAt?: string | null;
  readonly reorderUpTo?: string | null;
  readonly densityGPerCm3?: string | null;
}

export interface NewConsumable extends ConsumableAttributes {
  readonly id?: string;
  readonly name: string;
  readonly category: string;
  readonly stockUnit: StockUnit;
}

@Injectable()
export class CreateConsumable {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, command: NewConsumable): Promise<ConsumableView> {
    const row = newRow(actor, command);
    refuseUnfitReorder(row);
    return this.uow.run(actor.practiceId, (tx) =>
      createOnce(tx, actor, {
        entity: ConsumableEntity,
        row,
        sentId: command.id,
        kind: 'consumable',
        names: CONSUMABLE_NAMES,
        toView: consumableView,
      }),
    );
  }
}

export function refuseUnfitReorder(row: ConsumableEntity): void {
  const figure = (text: string | null) => (text === null ? null : quantity(text));
  const figures = { reorderAt: figure(row.reorderAt), reorderUpTo: figure(row.reorderUpTo) };
  refuseMisfits(reorderProblems(figures));
}

function newRow(actor: Actor, command: NewConsumable): ConsumableEntity {
  return {
    id: command.id ?? newId(),
    practiceId: actor.practiceId,
    name: command.name.trim(),
    category: command.category.trim(),
    stockUnit: command.stockUnit,
    shade: optionalText(command.shade),
    opacity: optionalText(command.opacity),
    viscosity: optionalText(command.viscosity),
    size: optionalText(command.size),
    grit: optionalText(command.grit),
    lifeAfterOpening: command.lifeAfterOpening?.value ?? null,
    lifeAfterOpeningUnit: command.lifeAfterOpening?.unit ?? null,
    reorderAt: plainQuantity(command.reorderAt),
    reorderUpTo: plainQuantity(command.reorderUpTo),
    densityGPerCm3: plainQuantity(command.densityGPerCm3),
    active: true,
  };
}
