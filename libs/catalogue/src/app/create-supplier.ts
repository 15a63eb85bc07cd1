import { Injectable } from '@nestjs/common';
import { type Actor, newId, UnitOfWork } from '#lib/platform';
import { SupplierEntity } from '../db/supplier.entity.js';
import type { SupplierLanguage } from '../domain/supplier-language.js';
import { createOnce } from './create-once.js';
import { SUPPLIER_NAMES } from './taken-names.js';
import { optionalText } from './texts.js';
import { type SupplierView, supplierView } from './views.js';

export interface NewSupplier {
  readonly id?: string;
  readonly name: string;
  readonly email?: string | null;
  readonly language?: SupplierLanguage;
  readonly customerNumber?: string | null;
}

@Injectable()
export class CreateSupplier {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, command: NewSupplier): Promise<SupplierView> {
    const row: SupplierEntity = {
      id: command.id ?? newId(),
      practiceId: actor.practiceId,
      name: command.name.trim(),
      email: optionalText(command.email),
      language: command.language ?? 'en',
      customerNumber: optionalText(command.customerNumber),
      active: true,
    };
    return this.uow.run(actor.practiceId, (tx) =>
      createOnce(tx, actor, {
        entity: SupplierEntity,
        row,
        sentId: command.id,
        kind: 'supplier',
        names: SUPPLIER_NAMES,
        toView: supplierView,
      }),
    );
  }
}
