import { Injectable } from '@nestjs/common';
import { type Actor, newId, UnitOfWork } from '#lib/platform';
import { LocationEntity } from '../db/location.entity.js';
import type { LocationKind } from '../domain/location-tree.js';
import { checkPlacement } from './check-placement.js';
import { createOnce } from './create-once.js';
import { LOCATION_NAMES } from './taken-names.js';
import { type LocationView, locationView } from './views.js';

export interface NewLocation {
  readonly id?: string;
  readonly name: string;
  readonly kind: LocationKind;
  readonly parentId?: string | null;
}

@Injectable()
export class CreateLocation {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, command: NewLocation): Promise<LocationView> {
    const row: LocationEntity = {
      id: command.id ?? newId(),
      practiceId: actor.practiceId,
      name: command.name.trim(),
      kind: command.kind,
      parentId: command.parentId ?? null,
      active: true,
    };
    return this.uow.run(actor.practiceId, (tx) =>
      createOnce(tx, actor, {
        entity: LocationEntity,
        row,
        sentId: command.id,
        kind: 'location',
        names: LOCATION_NAMES,
        toView: locationView,
        check: () => checkPlacement(tx, row.id, row.parentId),
      }),
    );
  }
}
