import { Injectable } from '@nestjs/common';
import {
  type Actor,
  addDays,
  type Claimed,
  Clock,
  invalidFields,
  type Tx,
  UnitOfWork,
} from '#lib/platform';
import type { HeldOrder } from '../../db/orders/orders.js';
import { loadPlanningSettings } from '../../db/planning-settings.js';
import { loadSupplyTerms } from '../../db/supply-terms.js';
import { expectedDay } from '../../domain/orders/order-days.js';
import { PLAIN_TERMS } from '../../domain/planning/planning-settings.js';
import { supplierCalendar } from '../../domain/planning/supplier-lead.js';
import type { OrderDto } from '../../http/orders/order-answers.dto.js';
import type { OrderSendingDto } from '../../http/orders/orders.dto.js';
import { OrderReader } from '../../queries/orders/order-reader.js';
import { MailOrder } from './mail-order.js';
import { figure, holdAsSeen, taken, write } from './order-steps.js';

/** So many days later people may still note that they sent an order. */
const LATEST_NOTE_DAYS = 90;

/**
 * Sends an approved order, or notes that people sent it. It is sent when the mail server has taken the
 * mail: everything is written first and the mail is the last thing before the commit, so a server that
 * fails leaves the order approved, and a second click waits and finds it sent.
 */
@Injectable()
export class SendOrder {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
    private readonly mail: MailOrder,
    private readonly reader: OrderReader,
  ) {}

  async run(
    actor: Actor,
    key: string,
    id: string,
    command: OrderSendingDto,
  ): Promise<Claimed<OrderDto>> {
    const operation = `POST /api/orders/${id}/sending`;
    return this.uow.runOnce({ actor, key, operation, body: command }, (tx) =>
      this.send(tx, actor, id, command),
    );
  }

  private async send(
    tx: Tx,
    actor: Actor,
    id: string,
    command: OrderSendingDto,
  ): Promise<OrderDto> {
    const { way } = command;
    const order = await holdAsSeen(tx, id, command.version);
    taken(order, { do: 'send' });
    const to =
      way === 'e-mail' ? await this.mail.addressOf(tx, order.supplierId, command.to) : null;
    const orderedOn = sentOn(command, this.clock.today(actor.timeZone));
    const expectedOn = command.expectedOn ?? (await reckonedDay(tx, order, orderedOn));
    if (expectedOn < orderedOn) {
      const message = `must not be before ${orderedOn}, when it was sent`;
      throw invalidFields([{ field: 'expectedOn', message }]);
    }
    const { personId } = actor;
    await write(tx, id, {
      changes: {
        ...{ state: 'sent', sent_by: personId, sent_way: way },
        ...{ ordered_on: orderedOn, expected_on: expectedOn },
      },
      events: [
        {
          kind: 'sent',
          details: {
            figures: [
              figure('way', way),
              ...(to === null ? [] : [figure('to', to)]),
              figure('sent on', orderedOn, 'day'),
              figure('expected on', expectedOn, 'day'),
            ],
          },
        },
      ],
      by: { personId, at: this.clock.now() },
    });
    const sent = await this.reader.get(tx, actor, id);
    if (to !== null) await this.mail.order(tx, actor, sent, to);
    return sent;
  }
}

/** People may note later what they sent; a mail goes now. */
function sentOn({ way, orderedOn }: OrderSendingDto, today: string): string {
  const day = orderedOn ?? today;
  const earliest = way === 'e-mail' ? today : addDays(today, -LATEST_NOTE_DAYS);
  if (day >= earliest && day <= today) return day;
  const message = way === 'e-mail' ? 'is today for a mail' : `must be from ${earliest} to ${today}`;
  throw invalidFields([{ field: 'orderedOn', message }]);
}

/** As many working days of the supplier after that day as it, or else the practice, says it takes. */
async function reckonedDay(tx: Tx, order: HeldOrder, orderedOn: string): Promise<string> {
  const { supplierId } = order;
  const terms = (await loadSupplyTerms(tx, supplierId)).get(supplierId) ?? PLAIN_TERMS;
  const leadDays = terms.leadDays ?? (await loadPlanningSettings(tx)).leadDays;
  return expectedDay(orderedOn, leadDays, supplierCalendar(terms));
}
