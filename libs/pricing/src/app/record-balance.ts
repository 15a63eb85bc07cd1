import { Injectable } from '@nestjs/common';
import { recordAudit } from '#lib/access';
import {
  type Actor,
  Clock,
  type IsoDate,
  newId,
  type Tx,
  UnitOfWork,
  unknownReference,
} from '#lib/platform';
import { FeePlanEntity } from '../db/fee-plan.entity.js';
import { BALANCES, type BalanceRow } from '../db/plan-balances.js';
import { type BalanceView, balanceView } from './balance-view.js';
import { checkBalance } from './check-balance.js';
import { refuseLater } from './refuse-later.js';

export interface NewBalance {
  readonly planId: string;
  readonly chartReference: string;
  readonly asOf: IsoDate;
  readonly deductibleLeft: string;
  readonly maximumLeft?: string | null;
}

/** What a person was told is left of a patient's year. It is entered, never worked out. */
@Injectable()
export class RecordBalance {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  async run(actor: Actor, key: string, command: NewBalance): Promise<BalanceView> {
    const booking = { actor, key, operation: 'POST /api/plan-balances', body: command };
    const done = await this.uow.runOnce(booking, async (tx) => {
      refuseLater('asOf', command.asOf, this.clock.today(actor.timeZone));
      const plan = await tx.manager.findOneBy(FeePlanEntity, { id: command.planId });
      if (!plan) throw unknownReference('planId', 'plan');
      checkBalance(actor, plan, command);
      const view = balanceView(await insert(tx, actor, command));
      const { id, now: _, ...details } = view;
      const subject = { subjectKind: 'plan-balance', subjectId: id, details };
      await recordAudit(tx, actor, { action: 'plan-balance.recorded', ...subject });
      return view;
    });
    return done.body;
  }
}

async function insert(tx: Tx, actor: Actor, command: NewBalance): Promise<BalanceRow> {
  const id = newId();
  await tx.query(
    `INSERT INTO plan_balances (id, practice_id, plan_id, chart_reference, as_of, deductible_left,
       maximum_left, recorded_by) VALUES ($1, $2, $3, $4, $5, $6, $7, $8)`,
    [
      id,
      tx.practiceId,
      command.planId,
      command.chartReference.trim(),
      command.asOf,
      command.deductibleLeft,
      command.maximumLeft ?? null,
      actor.personId,
    ],
  );
  const [row] = await tx.query<BalanceRow>(`${BALANCES} WHERE b.id = $1`, [id]);
  if (!row) throw new Error('A balance that was just written is not there');
  return row;
}
