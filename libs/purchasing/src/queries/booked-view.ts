import { formatQuantity, quantityFromMicro } from '#lib/measure';
import { amount } from '../domain/alert.js';
import { combineBooked } from '../domain/forecast/booked-visits.js';
import { isoDay } from '../domain/forecast/calendar.js';
import { expectedFromSteps, toSteps } from '../domain/forecast/quantity-grid.js';
import { bookedInSteps } from '../domain/forecast/shelf-forecast.js';
import type { BookedDemand } from '../domain/planning/booked-demand.js';
import type { BookedDayDto, BookedForecastDto } from '../http/forecast.dto.js';
import type { ForecastOfItem } from './forecast-shelf.js';

const SHOWN_DAYS = 90;

/** What bookings say of an item, day by day, beside the usual use that they stand for. */
export function bookedForecast(
  { forecast }: Pick<ForecastOfItem, 'forecast'>,
  demand: BookedDemand,
  consumable: { readonly id: string; readonly unit: string },
): BookedForecastDto | null {
  const booked = demand.of(consumable.id);
  if (booked === undefined) return null;
  const { step } = forecast;
  const usual = forecast.expectedByDay(SHOWN_DAYS).map((micro) => toSteps(micro, step));
  const inSteps = bookedInSteps(booked, { from: 0, days: SHOWN_DAYS }, step);
  const combined = combineBooked(usual, inSteps);
  const days: BookedDayDto[] = [];
  const total = { visits: 0, booked: 0n, replaced: 0n };
  usual.forEach((steps, day) => {
    const quantity = booked.quantities[day] ?? 0n;
    const covered = 1 - (combined.restShare[day] ?? 1);
    if (quantity === 0n && covered === 0) return;
    const replaced = expectedFromSteps(steps * covered, step);
    const visits = demand.visits[day] ?? 0;
    total.visits += visits;
    total.booked += quantity;
    total.replaced += replaced;
    days.push({
      day: isoDay(forecast.firstDay + day),
      visits,
      booked: text(quantity),
      usual: text(expectedFromSteps(steps, step)),
      replaced: text(replaced),
      expected: text(expectedFromSteps(combined.expected[day] ?? 0, step)),
    });
  });
  const keptShare = (Math.round(demand.keptShare * 1000) / 1000).toString();
  const sentence = sentenceOf(total, days, { ...demand, unit: consumable.unit });
  return { keptShare, wholeDay: demand.wholeDay, days, sentence };
}

function sentenceOf(
  total: { readonly visits: number; readonly booked: bigint; readonly replaced: bigint },
  days: readonly BookedDayDto[],
  about: { readonly keptShare: number; readonly unit: string },
): string {
  const last = days.at(-1)?.day ?? '';
  const visits = total.visits === 1 ? '1 visit is' : `${total.visits} visits are`;
  const percent = Math.round(about.keptShare * 100);
  return [
    `${visits} booked until ${last} and expected to use ${amount(roughly(total.booked), about.unit)},`,
    `as ${percent} % of bookings are kept;`,
    `that stands for ${amount(roughly(total.replaced), about.unit)} of the usual use.`,
  ].join(' ');
}

/** Three digits: an expectation. */
function roughly(micro: bigint): string {
  const value = Number(micro) / 1_000_000;
  return String(value >= 100 ? Math.round(value) : Number(value.toPrecision(3)));
}

function text(micro: bigint): string {
  return formatQuantity(quantityFromMicro(micro));
}
