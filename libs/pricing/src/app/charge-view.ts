import { formatTooth, type ToothNotation } from '#lib/dentition';
import { formatMoney, type Money, moneyFromMicro } from '#lib/measure';
import { instantText, microOf, moneyText } from '#lib/stock';
import type { ChargeRow } from '../db/charges.js';
import type {
  ChargeDto,
  ChargesPreviewDto,
  ChargeTotalsDto,
  PlanLeftDto,
  ShareDto,
} from '../http/charge.dto.js';
import type { WorkedOutCharge, WorkedOutCharges } from './work-out-charges.js';

export function chargeView(row: ChargeRow, notation: ToothNotation): ChargeDto {
  const { plan_id: planId, plan_name: planName } = row;
  return {
    id: row.id,
    visitId: row.visit_id,
    restorationId: row.restoration_id,
    chartReference: row.chart_reference,
    chargedOn: row.charged_on,
    tooth: formatTooth(row.tooth, notation),
    surfaces: row.surfaces,
    reason: row.reason,
    template: { id: row.template_id, name: row.template_name },
    feeCode: row.fee_code,
    feeName: row.fee_name,
    fee: moneyText(row.fee),
    plan: planId === null || planName === null ? null : { id: planId, name: planName },
    planPays: moneyText(row.plan_pays),
    patientPays: moneyText(row.patient_pays),
    writeOff: moneyText(row.write_off),
    deductibleUsed: moneyText(row.deductible_used),
    stated: row.stated,
    note: row.note,
    replacesId: row.replaces_id,
    current: row.is_current,
    visitReversed: row.visit_reversed,
    recordedBy: row.recorded_by,
    recordedAt: instantText(row.recorded_at),
  };
}

export function previewView(visitId: string, worked: WorkedOutCharges): ChargesPreviewDto {
  const { charges } = worked;
  const added = (of: (charge: WorkedOutCharge) => Money) =>
    formatMoney(moneyFromMicro(charges.reduce((sum, charge) => sum + of(charge), 0n)));
  const totals = {
    fee: added((charge) => charge.fee),
    planPays: added((charge) => charge.planPays),
    patientPays: added((charge) => charge.patientPays),
    writeOff: added((charge) => charge.writeOff),
  };
  return { visitId, charges: charges.map(shareView), totals, left: leftView(worked) };
}

function shareView(charge: WorkedOutCharge): ShareDto {
  const { plan } = charge;
  return {
    restorationId: charge.restoration.id,
    feeCode: charge.feeEntry?.code ?? null,
    fee: formatMoney(charge.fee),
    plan: plan && { id: plan.id, name: plan.name },
    planPays: formatMoney(charge.planPays),
    patientPays: formatMoney(charge.patientPays),
    writeOff: formatMoney(charge.writeOff),
    deductibleUsed: formatMoney(charge.deductibleUsed),
    stated: charge.isStated,
    replacesId: charge.restoration.charge_id,
  };
}

export function leftView({ plans, left }: WorkedOutCharges): PlanLeftDto[] {
  return plans.flatMap(({ id, name, asOf }) => {
    const balance = left.get(id);
    if (!balance || asOf === null) return [];
    const { deductibleLeft, maximumLeft } = balance;
    return {
      plan: { id, name },
      asOf,
      deductibleLeft: formatMoney(deductibleLeft),
      maximumLeft: maximumLeft === null ? null : formatMoney(maximumLeft),
    };
  });
}

export function totalsOf(rows: readonly ChargeRow[]): ChargeTotalsDto {
  const added = (of: (row: ChargeRow) => string) =>
    formatMoney(moneyFromMicro(rows.reduce((sum, row) => sum + microOf(of(row)), 0n)));
  return {
    fee: added((row) => row.fee),
    planPays: added((row) => row.plan_pays),
    patientPays: added((row) => row.patient_pays),
    writeOff: added((row) => row.write_off),
  };
}
