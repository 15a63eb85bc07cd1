import { Injectable } from '@nestjs/common';
import { type Actor, type Tx, UnitOfWork, unknownReference } from '#lib/platform';
import {
  chargesOfVisit,
  insertCharges,
  lockVisit,
  type NewCharge,
  restorationsOf,
} from '../db/charges.js';
import type { ChargesDto, NewChargesDto } from '../http/charge.dto.js';
import { refusePricing } from '../pricing.refusals.js';
import { chargeView, leftView, totalsOf } from './charge-view.js';
import { textOrNull } from './coins.js';
import { type WorkedOutCharge, workOutCharges } from './work-out-charges.js';

/**
 * Records what was asked for restorations of one visit and who pays it. What was recorded for them
 * before is replaced, and stays to be read. No balance is written: what is left of a plan is what
 * somebody was told, less the charges since.
 */
@Injectable()
export class RecordCharges {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, key: string, command: NewChargesDto): Promise<ChargesDto> {
    const booking = { actor, key, operation: 'POST /api/charges', body: command };
    const done = await this.uow.runOnce(booking, (tx) => record(tx, actor, command));
    return done.body;
  }
}

async function record(tx: Tx, actor: Actor, command: NewChargesDto): Promise<ChargesDto> {
  const { visitId, charges: inputs } = command;
  const visit = await lockVisit(tx, visitId);
  if (!visit) throw unknownReference('visitId', 'visit');
  if (visit.reversed) {
    throw refusePricing('visit_reversed', 'This visit was reversed: nothing is charged for it.', [
      { field: 'visitId', message: 'names a visit that was reversed' },
    ]);
  }
  const restorations = await restorationsOf(tx, visitId);
  const worked = await workOutCharges(tx, actor, { visit, restorations, inputs });
  const { personId } = actor;
  const by = { personId, day: visit.visited_on, note: textOrNull(command.note) };
  await insertCharges(tx, by, worked.charges.map(newCharge));
  const rows = await chargesOfVisit(tx, visitId);
  const charges = rows.map((row) => chargeView(row, actor.toothNotation));
  return { visitId, charges, totals: totalsOf(rows), left: leftView(worked) };
}

function newCharge(charge: WorkedOutCharge): NewCharge {
  const { restoration, feeEntry, plan, isStated, ...amounts } = charge;
  return {
    restorationId: restoration.id,
    replacesId: restoration.charge_id,
    feeId: feeEntry?.id ?? null,
    planId: plan?.id ?? null,
    ...amounts,
    stated: isStated,
  };
}
