import { Injectable } from '@nestjs/common';
import { type Actor, type Page, UnitOfWork } from '#lib/platform';
import { ConsumableEntity } from '../db/consumable.entity.js';
import { type ListQuery, pageByName } from '../db/page-by-name.js';
import { PresentationEntity } from '../db/presentation.entity.js';
import { findNamed } from './find.js';
import { type PresentationView, presentationView } from './views.js';

export interface PresentationQuery extends ListQuery {
  readonly consumableId?: string | undefined;
  readonly supplierId?: string | undefined;
  readonly deviceIdentifier?: string | undefined;
}

@Injectable()
export class ListPresentations {
  constructor(private readonly uow: UnitOfWork) {}

  /** `ofConsumable` is a consumable that a path names: it must exist. */
  async run(
    actor: Actor,
    query: PresentationQuery,
    ofConsumable?: string,
  ): Promise<Page<PresentationView>> {
    const wanted = { ...query, consumableId: ofConsumable ?? query.consumableId };
    return this.uow.read(actor.practiceId, async (tx) => {
      if (ofConsumable) await findNamed(tx, ConsumableEntity, ofConsumable, 'consumable');
      return pageByName(tx, {
        entity: PresentationEntity,
        query,
        narrow: (rows) => {
          for (const field of ['consumableId', 'supplierId', 'deviceIdentifier'] as const) {
            const value = wanted[field];
            if (value !== undefined) rows.andWhere(`row.${field} = :${field}`, { [field]: value });
          }
        },
        toView: presentationView,
      });
    });
  }
}
