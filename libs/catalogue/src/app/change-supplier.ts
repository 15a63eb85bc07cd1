import { Injectable } from '@nestjs/common';
import { recordAudit } from '#lib/access';
import { type Actor, UnitOfWork } from '#lib/platform';
import { SupplierEntity } from '../db/supplier.entity.js';
import { refusingTaken } from '../db/taken.js';
import { changesBetween } from '../domain/changes.js';
import { findToChange } from './find.js';
import { SUPPLIER_NAMES } from './taken-names.js';
import { optionalText } from './texts.js';
import { type SupplierView, supplierView } from './views.js';

export interface SupplierChanges {
  readonly name?: string;
  readonly email?: string | null;
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
        email: command.email === undefined ? before.email : optionalText(command.email),
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
