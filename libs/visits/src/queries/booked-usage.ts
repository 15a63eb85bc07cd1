import { Injectable } from '@nestjs/common';
import { formatQuantity, quantityFromMicro } from '#lib/measure';
import { type Actor, Clock, daysBetween, invalidFields, UnitOfWork } from '#lib/platform';
import { loadBooking } from '../db/booked-record.js';
import type { ConsumableFacts } from '../db/visit-facts.js';
import type {
  BookedDaysUsageDto,
  BookedDayUsageDto,
  BookedNeedDto,
  BookedUsageQuery,
  BookedVisitUsageDto,
} from '../http/booked-usage.dto.js';
import { noBooking } from './booked-list.js';
import { loadPlannedBookings, type PlannedBooking, planBookings } from './booked-plans.js';

const MOST_DAYS = 62;

/** What booked visits will use by their templates; nothing is written. */
@Injectable()
export class BookedUsage {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  async ofVisit(actor: Actor, id: string): Promise<BookedVisitUsageDto> {
    const today = this.clock.today(actor.timeZone);
    const planned = await this.uow.read(actor.practiceId, async (tx) => {
      const booking = await loadBooking(tx, id);
      if (!booking) throw noBooking();
      return planBookings(tx, today, [booking]);
    });
    const [one] = planned.bookings;
    if (!one) throw new Error('A booking was not planned');
    const { plan, booking } = one;
    const amounts = [...plan.needs].map(([each, { mean }]): [string, bigint] => [each, mean]);
    return {
      id,
      toCome: booking.state === 'booked' ? one.toCome : 0,
      minutes: plan.minutes,
      ways: plan.ways,
      shadeUnknown: plan.shadeUnknown,
      lines: linesOf(new Map(amounts), planned.consumables),
      assumptions: assumptionsOf(one),
    };
  }

  async byDay(actor: Actor, { from, to }: BookedUsageQuery): Promise<BookedDaysUsageDto> {
    const days = daysBetween(from, to) + 1;
    if (days < 1 || days > MOST_DAYS) {
      const message = `must not be before from, nor more than ${MOST_DAYS - 1} days after it`;
      throw invalidFields([{ field: 'to', message }]);
    }
    const today = this.clock.today(actor.timeZone);
    // What was not recorded on a day that has passed is not to come any more.
    const first = from < today ? today : from;
    const { bookings, consumables } = await this.uow.read(actor.practiceId, (tx) =>
      loadPlannedBookings(tx, today, { from: first, to }),
    );
    const byDay = new Map<string, PlannedBooking[]>();
    for (const each of bookings) {
      byDay.set(each.booking.day, [...(byDay.get(each.booking.day) ?? []), each]);
    }
    return { days: [...byDay].map(([day, planned]) => dayOf(day, planned, consumables)) };
  }
}

type Consumables = ReadonlyMap<string, ConsumableFacts>;

function dayOf(
  day: string,
  planned: readonly PlannedBooking[],
  consumables: Consumables,
): BookedDayUsageDto {
  const amounts = new Map<string, bigint>();
  for (const { plan, toCome } of planned) {
    for (const [id, { mean }] of plan.needs) {
      amounts.set(id, (amounts.get(id) ?? 0n) + mean * BigInt(toCome));
    }
  }
  const total = (of: (each: PlannedBooking) => number) =>
    planned.reduce((sum, each) => sum + of(each) * each.toCome, 0);
  return {
    day,
    visits: total(() => 1),
    shadesUnknown: total(({ plan }) => (plan.shadeUnknown ? 1 : 0)),
    minutes: total(({ plan }) => plan.minutes),
    lines: linesOf(amounts, consumables),
  };
}

function linesOf(amounts: ReadonlyMap<string, bigint>, consumables: Consumables): BookedNeedDto[] {
  const lines = [...amounts].map(([id, amount]): BookedNeedDto => {
    const facts = consumables.get(id);
    if (!facts) throw new Error(`Consumable ${id} of a booked visit was not loaded`);
    const { name, shade, category, stock_unit: unit } = facts;
    const quantity = formatQuantity(quantityFromMicro(amount));
    return { consumable: { id, name, shade, category, unit }, quantity };
  });
  const key = ({ consumable: c }: BookedNeedDto) => `${c.name} ${c.shade ?? ''} ${c.id}`;
  return lines.sort((a, b) => (key(a) < key(b) ? -1 : 1));
}

function assumptionsOf({ plan, booking }: PlannedBooking): string[] {
  const { ways, shadeUnknown } = plan;
  const open = booking.restorations.some((r) => r.tooth === null || r.surfaces === null);
  const found: string[] = [];
  if (ways > 1) {
    found.push(`What nobody said is as in the last ${ways} restorations by the same template.`);
  } else if (open) {
    found.push('Nobody said the tooth and its surfaces: planned with one of the usual ones.');
  }
  if (shadeUnknown) {
    found.push(
      'Nobody said the shade, and none was recorded with this template: no paste planned.',
    );
  }
  return found;
}
