import { Injectable } from '@nestjs/common';
import { type Actor, UnitOfWork } from '#lib/platform';
import { ConsumableEntity } from '../db/consumable.entity.js';
import { findNamed } from './find.js';
import { type ConsumableView, consumableView } from './views.js';

@Injectable()
export class GetConsumable {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, id: string): Promise<ConsumableView> {
    return this.uow.read(actor.practiceId, async (tx) =>
      consumableView(await findNamed(tx, ConsumableEntity, id, 'consumable')),
    );
  }
}
