import { Injectable } from '@nestjs/common';
import { formatMoney, money } from '#lib/measure';
import { type Actor, UnitOfWork } from '#lib/platform';
import { instantText, moneyText } from '#lib/stock';
import { type CostRateRow, loadCostRates } from '../db/cost-rates.js';
import { type Capacity, capacityRate } from '../domain/chair-time.js';
import type { CostRateDto, CostRatesDto } from '../http/cost-rate.dto.js';

@Injectable()
export class ListCostRates {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor): Promise<CostRatesDto> {
    const rows = await this.uow.read(actor.practiceId, loadCostRates);
    return { currency: actor.currency, items: rows.map(toCostRate).reverse() };
  }
}

export function capacityOf(row: CostRateRow): Capacity {
  return {
    yearlyCost: money(row.yearly_cost),
    practicalMinutes: BigInt(row.practical_minutes),
  };
}

export function toCostRate(row: CostRateRow): CostRateDto {
  return {
    id: row.id,
    validFrom: row.valid_from,
    yearlyCost: moneyText(row.yearly_cost),
    practicalMinutes: row.practical_minutes,
    ratePerMinute: formatMoney(capacityRate(capacityOf(row))),
    assistantRate: row.assistant_rate === null ? null : moneyText(row.assistant_rate),
    assistantPracticalMinutes: row.assistant_practical_minutes,
    note: row.note,
    recordedBy: { id: row.recorded_by, name: row.recorder },
    recordedAt: instantText(row.recorded_at),
  };
}
