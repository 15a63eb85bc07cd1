import { Injectable } from '@nestjs/common';
import { type Actor, UnitOfWork, unknownReference } from '#lib/platform';
import { findVisit, restorationsOf } from '../db/charges.js';
import type { ChargesPreviewDto, NewChargesDto } from '../http/charge.dto.js';
import { previewView } from './charge-view.js';
import { workOutCharges } from './work-out-charges.js';

/** What recording these charges would say. Nothing is written. */
@Injectable()
export class PreviewCharges {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, command: NewChargesDto): Promise<ChargesPreviewDto> {
    const { visitId, charges: inputs } = command;
    return this.uow.read(actor.practiceId, async (tx) => {
      const visit = await findVisit(tx, visitId);
      if (!visit) throw unknownReference('visitId', 'visit');
      const restorations = await restorationsOf(tx, visitId);
      return previewView(visitId, await workOutCharges(tx, actor, { visit, restorations, inputs }));
    });
  }
}
