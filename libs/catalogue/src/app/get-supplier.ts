import { Injectable } from '@nestjs/common';
import { type Actor, UnitOfWork } from '#lib/platform';
import { SupplierEntity } from '../db/supplier.entity.js';
import { findNamed } from './find.js';
import { type SupplierView, supplierView } from './views.js';

@Injectable()
export class GetSupplier {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, id: string): Promise<SupplierView> {
    return this.uow.read(actor.practiceId, async (tx) =>
      supplierView(await findNamed(tx, SupplierEntity, id, 'supplier')),
    );
  }
}
