import { Injectable } from '@nestjs/common';
import { type Actor, type Page, UnitOfWork } from '#lib/platform';
import { ConsumableEntity } from '../db/consumable.entity.js';
import { type ListQuery, pageByName, type SortColumn } from '../db/page-by-name.js';
import { type ConsumableView, consumableView } from './views.js';

export interface ConsumableQuery extends ListQuery {
  readonly category?: string | undefined;
  readonly shade?: string | undefined;
}

const SORTS: Readonly<Record<string, SortColumn<ConsumableEntity>>> = {
  category: { column: 'category', kind: 'text', valueOf: (row) => row.category },
  reorderAt: { column: 'reorder_at', kind: 'number', valueOf: (row) => row.reorderAt },
  reorderUpTo: { column: 'reorder_up_to', kind: 'number', valueOf: (row) => row.reorderUpTo },
};

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
        sorts: SORTS,
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
