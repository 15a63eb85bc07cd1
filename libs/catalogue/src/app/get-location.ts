import { Injectable } from '@nestjs/common';
import { type Actor, UnitOfWork } from '#lib/platform';
import { LocationEntity } from '../db/location.entity.js';
import { findNamed } from './find.js';
import { type LocationView, locationView } from './views.js';

@Injectable()
export class GetLocation {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, id: string): Promise<LocationView> {
    return this.uow.read(actor.practiceId, async (tx) =>
      locationView(await findNamed(tx, LocationEntity, id, 'location')),
    );
  }
}
