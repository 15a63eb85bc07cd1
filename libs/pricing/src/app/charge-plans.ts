import { In } from 'typeorm';
import { type IsoDate, type Tx, unknownReference } from '#lib/platform';
import type { ChargedVisit } from '../db/charges.js';
import { FeePlanEntity } from '../db/fee-plan.entity.js';
import { leftOn, lockChart } from '../db/plan-left.js';
import type { ChargedPlan } from '../domain/charge-shares.js';
import type { NewChargeDto } from '../http/charge.dto.js';

export interface ChargePlan extends ChargedPlan {
  readonly id: string;
  readonly name: string;
  /** The day of the figure that was told; null: nobody was. */
  readonly asOf: IsoDate | null;
}

interface Asked {
  readonly visit: ChargedVisit;
  readonly inputs: readonly NewChargeDto[];
}

/**
 * The plans that are asked to pay, with what was left of them before these charges. A plan that is
 * no longer in use still counts for the visits of its time.
 */
export async function loadChargePlans(
  tx: Tx,
  { visit, inputs }: Asked,
): Promise<ReadonlyMap<string, ChargePlan>> {
  const ids = [...new Set(inputs.flatMap((input) => input.planId ?? []))];
  const plans = new Map<string, ChargePlan>();
  if (ids.length === 0) return plans;
  await lockChart(tx, visit.chart_reference);
  const rows = await tx.manager.findBy(FeePlanEntity, { id: In(ids) });
  const unknown = inputs.findIndex(
    ({ planId }) => planId && !rows.some((row) => row.id === planId),
  );
  if (unknown >= 0) throw unknownReference(`charges[${unknown}].planId`, 'plan');
  const except = inputs.map((input) => input.restorationId);
  for (const row of rows) {
    const { id, name, inNetwork: network, feeCeiling, downgradeBilled } = row;
    const asked = { planId: id, chartReference: visit.chart_reference, day: visit.visited_on };
    const left = await leftOn(tx, { ...asked, except });
    const settings = { network, feeCeiling, downgradeBilled };
    plans.set(id, { id, name, settings, balance: left ?? null, asOf: left?.asOf ?? null });
  }
  return plans;
}
