import { Injectable } from '@nestjs/common';
import { recordAudit } from '#lib/access';
import { type Actor, type Tx, UnitOfWork } from '#lib/platform';
import { refuseCatalogue } from '../catalogue.refusals.js';
import { locationHoldsStock } from '../db/delivered.js';
import { LocationEntity } from '../db/location.entity.js';
import { refusingTaken } from '../db/taken.js';
import { changesBetween } from '../domain/changes.js';
import type { LocationKind } from '../domain/location-tree.js';
import { checkPlacement } from './check-placement.js';
import { findToChange } from './find.js';
import { LOCATION_NAMES } from './taken-names.js';
import { type LocationView, locationView } from './views.js';

export interface LocationChanges {
  readonly name?: string;
  readonly kind?: LocationKind;
  readonly parentId?: string | null;
  readonly active?: boolean;
}

@Injectable()
export class ChangeLocation {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, id: string, command: LocationChanges): Promise<LocationView> {
    return this.uow.run(actor.practiceId, async (tx) => {
      if (command.parentId) await checkPlacement(tx, id, command.parentId);
      const before = await findToChange(tx, LocationEntity, id, 'location');
      const after: LocationEntity = {
        ...before,
        name: command.name?.trim() ?? before.name,
        kind: command.kind ?? before.kind,
        parentId: command.parentId === undefined ? before.parentId : command.parentId,
        active: command.active ?? before.active,
      };
      const changes = changesBetween(locationView(before), locationView(after));
      if (!changes) return locationView(before);
      if (before.active && !after.active) await refuseWhileStocked(tx, id);
      await refusingTaken(LOCATION_NAMES, () => tx.manager.update(LocationEntity, { id }, after));
      await recordAudit(tx, actor, {
        action: 'location.changed',
        subjectKind: 'location',
        subjectId: id,
        details: changes,
      });
      return locationView(after);
    });
  }
}

async function refuseWhileStocked(tx: Tx, id: string): Promise<void> {
  if (!(await locationHoldsStock(tx, id))) return;
  throw refuseCatalogue('location_holds_stock', 'Move its stock to another location first.', [
    { field: 'active', message: 'cannot be false while stock lies here' },
  ]);
}
