import type { EpochDay } from '../domain/forecast/calendar.js';
import { leadFrom, type SupplierLead } from '../domain/planning/supplier-lead.js';
import type { LeadChanceDto, SupplierLeadDto } from '../http/supply-terms.dto.js';

/** Chances below this are not worth a bar. */
const SHOWN = 0.0005;

export function leadDto(lead: SupplierLead, today: EpochDay): SupplierLeadDto {
  const { statedDays, statedBy, orders, open, workingDays } = lead;
  return {
    ...{ statedDays, statedBy, orders, open },
    assumed: told(lead.assumed),
    mean: told(workingDays.mean),
    p90: workingDays.quantile(0.9),
    workingDays: chances(
      Array.from(workingDays.weights, (probability, days) => ({ days, probability })),
    ),
    fromToday: chances(leadFrom(lead, today)),
  };
}

function chances(
  list: readonly { readonly days: number; readonly probability: number }[],
): LeadChanceDto[] {
  return list
    .filter(({ probability }) => probability >= SHOWN)
    .map(({ days, probability }) => ({ days, chance: told(probability) }));
}

function told(value: number): string {
  return String(Number(value.toFixed(6)));
}
