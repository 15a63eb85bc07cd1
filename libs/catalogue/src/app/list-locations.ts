import { Injectable } from '@nestjs/common';
import { type Actor, type Page, UnitOfWork } from '#lib/platform';
import { LocationEntity } from '../db/location.entity.js';
import { type ListQuery, pageByName } from '../db/page-by-name.js';
import { type LocationView, locationView } from './views.js';

@Injectable()
export class ListLocations {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, query: ListQuery): Promise<Page<LocationView>> {
    return this.uow.read(actor.practiceId, (tx) =>
      pageByName(tx, { entity: LocationEntity, query, toView: locationView }),
    );
  }
}
