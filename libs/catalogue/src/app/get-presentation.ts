import { Injectable } from '@nestjs/common';
import { type Actor, UnitOfWork } from '#lib/platform';
import { PresentationEntity } from '../db/presentation.entity.js';
import { findNamed } from './find.js';
import { type PresentationView, presentationView } from './views.js';

@Injectable()
export class GetPresentation {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, id: string): Promise<PresentationView> {
    return this.uow.read(actor.practiceId, async (tx) =>
      presentationView(await findNamed(tx, PresentationEntity, id, 'presentation')),
    );
  }
}
