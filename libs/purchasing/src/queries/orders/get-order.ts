import { Injectable } from '@nestjs/common';
import { type Actor, UnitOfWork } from '#lib/platform';
import type { OrderDto } from '../../http/orders/order-answers.dto.js';
import { OrderReader } from './order-reader.js';

/** One order with its lines, what came of them, and what happened. */
@Injectable()
export class GetOrder {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly reader: OrderReader,
  ) {}

  async run(actor: Actor, id: string): Promise<OrderDto> {
    return this.uow.read(actor.practiceId, (tx) => this.reader.get(tx, actor, id));
  }
}
