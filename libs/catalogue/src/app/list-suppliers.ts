import { Injectable } from '@nestjs/common';
import { type Actor, type Page, UnitOfWork } from '#lib/platform';
import { type ListQuery, pageByName, type SortColumn } from '../db/page-by-name.js';
import { SupplierEntity } from '../db/supplier.entity.js';
import { type SupplierView, supplierView } from './views.js';

const SORTS: Readonly<Record<string, SortColumn<SupplierEntity>>> = {
  email: { column: 'email', kind: 'text', valueOf: (row) => row.email },
};

@Injectable()
export class ListSuppliers {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, query: ListQuery): Promise<Page<SupplierView>> {
    return this.uow.read(actor.practiceId, (tx) =>
      pageByName(tx, { entity: SupplierEntity, query, sorts: SORTS, toView: supplierView }),
    );
  }
}
