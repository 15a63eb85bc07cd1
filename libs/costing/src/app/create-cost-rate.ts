import { Injectable } from '@nestjs/common';
import { recordAudit } from '#lib/access';
import { formatMoney, money } from '#lib/measure';
import { type Actor, invalidFields, newId, UnitOfWork } from '#lib/platform';
import { insertCostRate, loadCostRates, type NewCostRateRow } from '../db/cost-rates.js';
import type { CostRateDto, NewCostRateDto } from '../http/cost-rate.dto.js';
import { toCostRate } from './list-cost-rates.js';

/** Enters what a year of the chairs costs from a day on. A rate never changes: enter the next. */
@Injectable()
export class CreateCostRate {
  constructor(private readonly uow: UnitOfWork) {}

  /** Sent again with the same id and the same data, it writes nothing and answers the same. */
  async run(actor: Actor, command: NewCostRateDto): Promise<CostRateDto> {
    const row = rowOf(command);
    return this.uow.run(actor.practiceId, async (tx) => {
      const earlier = (await loadCostRates(tx)).find((each) => each.id === row.id);
      if (earlier && sameRate(toCostRate(earlier), row)) return toCostRate(earlier);
      await insertCostRate(tx, actor.personId, row);
      await recordAudit(tx, actor, {
        action: 'cost-rate.created',
        subjectKind: 'cost-rate',
        subjectId: row.id,
        details: { ...row },
      });
      const written = (await loadCostRates(tx)).find((each) => each.id === row.id);
      if (!written) throw new Error('A rate that was written cannot be read');
      return toCostRate(written);
    });
  }
}

function rowOf(command: NewCostRateDto): NewCostRateRow {
  const { assistantRate, assistantPracticalMinutes } = command;
  if (assistantPracticalMinutes && !assistantRate) {
    const message = 'is needed to cost the minutes of assistants';
    throw invalidFields([{ field: 'assistantRate', message }]);
  }
  return {
    id: command.id ?? newId(),
    validFrom: command.validFrom,
    yearlyCost: formatMoney(money(command.yearlyCost)),
    practicalMinutes: command.practicalMinutes,
    assistantRate: assistantRate ? formatMoney(money(assistantRate)) : null,
    assistantPracticalMinutes: assistantPracticalMinutes ?? null,
    note: command.note?.trim() || null,
  };
}

function sameRate(a: CostRateDto, b: NewCostRateRow): boolean {
  const content = (r: Omit<NewCostRateRow, 'id'>) =>
    JSON.stringify([
      ...[r.validFrom, r.yearlyCost, r.practicalMinutes],
      ...[r.assistantRate, r.assistantPracticalMinutes, r.note],
    ]);
  return content(a) === content(b);
}
