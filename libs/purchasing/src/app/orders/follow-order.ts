import { Injectable } from '@nestjs/common';
import { type Actor, type Claimed, Clock, type Tx, UnitOfWork } from '#lib/platform';
import { type HeldOrder, type NewOrderEvent, saveCancelled } from '../../db/orders/orders.js';
import { outstandingOf } from '../../domain/orders/order-life.js';
import type { OrderDto } from '../../http/orders/order-answers.dto.js';
import type {
  OrderActDto,
  OrderChasingDto,
  SupplierAnswerDto,
} from '../../http/orders/orders.dto.js';
import { refusePurchasing } from '../../purchasing.refusals.js';
import { OrderReader } from '../../queries/orders/order-reader.js';
import { MailOrder } from './mail-order.js';
import { figure, type Happened, holdAsSeen, noteOf, taken, write } from './order-steps.js';

/** What happens to an order after it was sent, and how one that was not sent ends. */
@Injectable()
export class FollowOrder {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
    private readonly mail: MailOrder,
    private readonly reader: OrderReader,
  ) {}

  /** Asks the supplier where the goods are, or notes that somebody did. */
  chase(
    actor: Actor,
    key: string,
    id: string,
    command: OrderChasingDto,
  ): Promise<Claimed<OrderDto>> {
    return this.once(actor, { key, id, command, act: 'chasing' }, async (tx, order) => {
      taken(order, { do: 'chase' });
      const { way } = command;
      const to =
        way === 'e-mail' ? await this.mail.addressOf(tx, order.supplierId, command.to) : null;
      const outstanding = order.lines.reduce((sum, line) => sum + outstandingOf(line), 0);
      const figures = [
        ...[figure('way', way), ...(to === null ? [] : [figure('to', to)])],
        figure('outstanding', String(outstanding), 'packs'),
      ];
      await this.write(tx, actor, order, {
        changes: {},
        events: [{ kind: 'chased', note: noteOf(command), details: { figures } }],
      });
      if (to === null) return;
      const chased = await this.reader.get(tx, actor, id);
      await this.mail.chase(actor, chased, to, noteOf(command));
    });
  }

  /** What the supplier said: another day, a number of its own, what will not come. */
  answer(
    actor: Actor,
    key: string,
    id: string,
    command: SupplierAnswerDto,
  ): Promise<Claimed<OrderDto>> {
    return this.once(actor, { key, id, command, act: 'answer' }, async (tx, order) => {
      const willNotCome = command.willNotCome ?? [];
      const expectedOn = command.expectedOn ?? null;
      const reference = command.reference?.trim() ?? null;
      const { order: after, events } = taken(order, { do: 'answer', willNotCome });
      if (expectedOn !== null && order.orderedOn !== null && expectedOn < order.orderedOn) {
        throw refusePurchasing('order_does_not_fit', 'The day is before the order was sent.', [
          { field: 'expectedOn', message: `must not be before ${order.orderedOn}` },
        ]);
      }
      await saveCancelled(tx, after.lines);
      const [first, ...rest] = events;
      await this.write(tx, actor, order, {
        changes: {
          state: after.state,
          ...(expectedOn === null ? {} : { expected_on: expectedOn }),
          ...(reference === null ? {} : { reference }),
        },
        events: [
          {
            kind: first ?? 'supplier answered',
            note: noteOf(command),
            details: { figures: answerFigures(order, command) },
          },
          ...rest.map((kind) => ({ kind })),
        ],
      });
    });
  }

  /** Nothing more is expected: what is outstanding will not come. */
  close(actor: Actor, key: string, id: string, command: OrderActDto): Promise<Claimed<OrderDto>> {
    return this.once(actor, { key, id, command, act: 'closing' }, async (tx, order) => {
      const { order: after, events } = taken(order, { do: 'close' });
      await saveCancelled(tx, after.lines);
      const given = order.lines.reduce((sum, line) => sum + outstandingOf(line), 0);
      const figures = [figure('will not come', String(given), 'packs')];
      await this.write(tx, actor, order, {
        changes: { state: after.state },
        events: events.map((kind) => ({ kind, note: noteOf(command), details: { figures } })),
      });
    });
  }

  cancel(actor: Actor, key: string, id: string, command: OrderActDto): Promise<Claimed<OrderDto>> {
    return this.once(actor, { key, id, command, act: 'cancellation' }, async (tx, order) => {
      const { order: after, events } = taken(order, { do: 'cancel' });
      await this.write(tx, actor, order, {
        changes: { state: after.state },
        events: events.map((kind): NewOrderEvent => ({ kind, note: noteOf(command) })),
      });
    });
  }

  private once<C extends OrderActDto>(
    actor: Actor,
    about: { readonly key: string; readonly id: string; readonly command: C; readonly act: string },
    work: (tx: Tx, order: HeldOrder) => Promise<void>,
  ): Promise<Claimed<OrderDto>> {
    const { key, id, command, act } = about;
    const operation = `POST /api/orders/${id}/${act}`;
    return this.uow.runOnce({ actor, key, operation, body: command }, async (tx) => {
      await work(tx, await holdAsSeen(tx, id, command.version));
      return this.reader.get(tx, actor, id);
    });
  }

  private write(tx: Tx, actor: Actor, order: HeldOrder, what: Omit<Happened, 'by'>): Promise<void> {
    const by = { personId: actor.personId, at: this.clock.now() };
    return write(tx, order.id, { ...what, by });
  }
}

function answerFigures(order: HeldOrder, command: SupplierAnswerDto) {
  const packs = (command.willNotCome ?? []).map(({ lineId, packs: missing }) => {
    const number = order.lines.find(({ id }) => id === lineId)?.lineNumber ?? 0;
    return figure(`line ${number} will not come`, String(missing), 'packs');
  });
  const { expectedOn, reference } = command;
  return [
    ...(expectedOn ? [figure('expected on', expectedOn, 'day')] : []),
    ...(reference ? [figure('reference', reference.trim())] : []),
    ...packs,
  ];
}
