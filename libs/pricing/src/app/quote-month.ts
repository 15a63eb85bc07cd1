import { Injectable } from '@nestjs/common';
import {
  formatMoney,
  formatQuantity,
  type Money,
  money,
  multiplyRatio,
  type Quantity,
  quantity,
  quantityFromMicro,
} from '#lib/measure';
import { type Actor, currencyStep, refuse } from '#lib/platform';
import { monthOfWork } from '../domain/month-of-work.js';
import type { MonthOfWorkDto, MonthQuestionDto } from '../http/quote-month.dto.js';

/** What a month of some work leaves, and how many of each pay for the fixed cost. */
@Injectable()
export class WorkOutMonth {
  run(actor: Actor, body: MonthQuestionDto): MonthOfWorkDto {
    refuseUntimed(body);
    const hours = body.chairHours == null ? null : quantity(body.chairHours);
    const month = monthOfWork({
      fixed: money(body.fixedCost),
      targetProfit: money(body.targetProfit ?? '0'),
      minutes: hours && quantityFromMicro(hours * 60n),
      step: currencyStep(actor.currency),
      kinds: body.kinds.map(({ price, variable, number, minutes }) => ({
        price: money(price),
        variable: money(variable),
        number: BigInt(number),
        minutes: minutes == null ? null : quantity(minutes),
      })),
    });
    return {
      kinds: month.kinds.map((kind, i) => ({
        name: body.kinds[i]?.name ?? '',
        contribution: formatMoney(kind.unit),
        contributionShare: shown(kind.ratio),
        contributionOfAll: formatMoney(kind.total),
        contributionPerHour: paid(kind.perHour),
        needed: shown(kind.needed),
        neededWhole: kind.neededWhole === null ? null : Number(kind.neededWhole),
        rank: kind.rank,
        fits: shown(kind.fits),
      })),
      revenue: formatMoney(month.revenue),
      contribution: formatMoney(month.contribution),
      income: formatMoney(month.income),
      leverage: shown(month.leverage),
      breakEvenRevenue: paid(month.breakEvenRevenue),
      safety: paid(month.safety),
      safetyShare: shown(month.safetyShare),
      chairHours: month.minutes === null ? null : formatQuantity(hoursOf(month.minutes)),
    };
  }
}

function refuseUntimed({ chairHours, kinds }: MonthQuestionDto): void {
  if (chairHours == null) return;
  const fields = kinds.flatMap(({ minutes }, i) =>
    minutes == null ? [{ field: `kinds[${i}].minutes`, message: 'must be stated' }] : [],
  );
  if (fields.length === 0) return;
  throw refuse('invalid_request', 'Chair hours need the chair time of every kind.', fields);
}

function hoursOf(minutes: Quantity): Quantity {
  return quantityFromMicro(multiplyRatio(minutes, 1n, 60n, 'half-up'));
}

const shown = (amount: Quantity | null) => (amount === null ? null : formatQuantity(amount));
const paid = (amount: Money | null) => (amount === null ? null : formatMoney(amount));
