import { Injectable } from '@nestjs/common';
import { type Actor, type Page, UnitOfWork } from '#lib/platform';
import { ConsumableEntity } from '../db/consumable.entity.js';
import { type ListQuery, pageByName } from '../db/page-by-name.js';
import { type ConsumableView, consumableView } from './views.js';

export interface ConsumableQuery extends ListQuery {
  readonly category?: string | undefined;
  readonly shade?: string | undefined;
}

@Injectable()
export class ListConsumables {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, query: ConsumableQuery): Promise<Page<ConsumableView>> {
    const { category, shade } = query;
    return this.uow.read(actor.practiceId, (tx) =>
      pageByName(tx, {
        entity: ConsumableEntity,
        query,
        searched: ['category', 'shade', 'size', 'grit'],
        narrow: (rows) => {
          if (category !== undefined)
            rows.andWhere('lower(row.category) = lower(:category)', { category });
          if (shade !== undefined) rows.andWhere('lower(row.shade) = lower(:shade)', { shade });
        },
        toView: consumableView,
      }),
    );
  }
}
