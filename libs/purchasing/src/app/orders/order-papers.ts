import { Injectable } from '@nestjs/common';
import { type Actor, Clock, type Tx, UnitOfWork } from '#lib/platform';
import { loadOrderRules } from '../../db/orders/order-rules.js';
import type { OrderDto } from '../../http/orders/order-answers.dto.js';
import { orderCsv } from '../../http/orders/order-csv.js';
import { printOrder } from '../../http/orders/order-pdf.js';
import { OrderReader } from '../../queries/orders/order-reader.js';

export const PAPER_FORMS = ['pdf', 'csv'] as const;
export type PaperForm = (typeof PAPER_FORMS)[number];

/** A file of an order with the name under which it is kept. */
export interface OrderFile {
  readonly filename: string;
  readonly contentType: string;
  readonly content: Buffer;
}

/** An order as its supplier gets it: a PDF for people, a CSV for machines. */
@Injectable()
export class OrderPapers {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
    private readonly reader: OrderReader,
  ) {}

  async run(actor: Actor, id: string, form: PaperForm): Promise<OrderFile> {
    return this.uow.read(actor.practiceId, async (tx) => {
      const order = await this.reader.get(tx, actor, id);
      return this.file(tx, actor, order, form);
    });
  }

  async file(tx: Tx, actor: Actor, order: OrderDto, form: PaperForm): Promise<OrderFile> {
    const filename = `order-${order.number}.${form}`;
    if (form === 'csv') {
      return { filename, contentType: 'text/csv; charset=utf-8', content: orderCsv(order) };
    }
    const { practiceName } = actor;
    const { deliverTo } = await loadOrderRules(tx);
    const printedAt = this.clock.now();
    const content = await printOrder({ order, practiceName, deliverTo, printedAt });
    return { filename, contentType: 'application/pdf', content };
  }
}
