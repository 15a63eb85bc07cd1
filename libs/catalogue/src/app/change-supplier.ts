import { Injectable } from '@nestjs/common';
import { recordAudit } from '#lib/access';
import { type Actor, UnitOfWork } from '#lib/platform';
import { SupplierEntity } from '../db/supplier.entity.js';
import { refusingTaken } from '../db/taken.js';
import { changesBetween } from '../domain/changes.js';
import type { SupplierLanguage } from '../domain/supplier-language.js';
import { findToChange } from './find.js';
import { SUPPLIER_NAMES } from './taken-names.js';
import { changedText } from './texts.js';
import { type SupplierView, supplierView } from './views.js';

export interface SupplierChanges {
  readonly name?: string;
  readonly email?: string | null;
  readonly language?: SupplierLanguage;
  readonly customerNumber?: string | null;
  readonly active?: boolean;
}

@Injectable()
export class ChangeSupplier {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, id: string, command: SupplierChanges): Promise<SupplierView> {
    return this.uow.run(actor.practiceId, async (tx) => {
      const before = await findToChange(tx, SupplierEntity, id, 'supplier');
      const after: SupplierEntity = {
        ...before,
        name: command.name?.trim() ?? before.name,
        email: changedText(command.email, before.email),
        language: command.language ?? before.language,
        customerNumber: changedText(command.customerNumber, before.customerNumber),
        active: command.active ?? before.active,
      };
      const changes = changesBetween(supplierView(before), supplierView(after));
      if (!changes) return supplierView(before);
      await refusingTaken(SUPPLIER_NAMES, () => tx.manager.update(SupplierEntity, { id }, after));
      await recordAudit(tx, actor, {
        action: 'supplier.changed',
        subjectKind: 'supplier',
        subjectId: id,
        details: changes,
      });
      return supplierView(after);
    });
  }
}
