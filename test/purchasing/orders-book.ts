import { randomUUID } from 'node:crypto';
import type { Role } from '../../libs/platform/src/index.js';
import { type Item, openSmallBook, type SmallBook } from '../book/book.js';
import type { Answer, TestService } from '../http/service.js';

export interface OrderLine {
  readonly id: string;
  readonly lineNumber: number;
  readonly packs: number;
  readonly packPrice: string | null;
  readonly received: number;
  readonly cancelled: number;
  readonly outstanding: number;
  readonly surplus: number;
  readonly presentation: { readonly id: string };
  readonly proposed: { packs: number; sentence: string; figures: { name: string }[] } | null;
  readonly arrivals: readonly { deliveryId: string; packs: number; packPrice: string }[];
}

export interface Order {
  readonly id: string;
  readonly number: number;
  readonly version: number;
  readonly state: string;
  readonly arrival: string;
  readonly goods: string;
  readonly freight: string;
  readonly total: string;
  readonly orderedOn: string | null;
  readonly expectedOn: string | null;
  readonly daysLate: number | null;
  readonly limits: { inTheWay: string | null; budgetLeft: string | null } | null;
  readonly lines: readonly OrderLine[];
  readonly events: readonly {
    kind: string;
    note: string | null;
    figures: { name: string; value: string }[];
  }[];
}

/** A small book whose supplier takes orders, asked for them as people ask. */
export class OrderBook {
  private constructor(readonly small: SmallBook) {}

  static async open(service: TestService, prefix: string): Promise<OrderBook> {
    const small = await openSmallBook(service, prefix);
    const { book, supplier } = small;
    await book.done('PATCH', `/suppliers/${supplier}`, {
      ...{ email: 'orders@northgate.example', customerNumber: 'K-77' },
    });
    await book.done('PUT', `/reorder/settings/suppliers/${supplier}`, {
      ...{ leadDays: 2, freight: '7.90', freeFreightFrom: '150' },
      workingDays: ['monday', 'tuesday', 'wednesday', 'thursday', 'friday'],
    });
    return new OrderBook(small);
  }

  line(of: Item, packs: number, packPrice?: string) {
    return { presentationId: of.presentation, packs, packPrice: packPrice ?? null };
  }

  draft(lines: object[], more: object = {}): Promise<Order> {
    const { supplier, book } = this.small;
    return book.done<Order>('POST', '/orders', { supplierId: supplier, lines, ...more });
  }

  get(id: string): Promise<Order> {
    return this.small.book.done<Order>('GET', `/orders/${id}`);
  }

  /** Does something with an order as it is now, whatever becomes of it. */
  async tries(order: Order, act: string, body: object = {}, role: Role = 'owner', key?: string) {
    const { version } = await this.get(order.id);
    const sent = key === undefined ? {} : { headers: { 'idempotency-key': key } };
    const path = `/orders/${order.id}/${act}`;
    return this.small.book.ask('POST', path, { version, ...body }, role, sent);
  }

  async act(order: Order, act: string, body: object = {}): Promise<Order> {
    const answer = await this.tries(order, act, body);
    if (answer.status !== 201) throw new Error(`${act}: ${answer.status} ${answer.text}`);
    return answer.body as unknown as Order;
  }

  async sent(lines: object[], way = 'by hand'): Promise<Order> {
    const draft = await this.draft(lines);
    await this.act(draft, 'approval');
    return this.act(draft, 'sending', { way });
  }

  /** Books a delivery against lines of an order: [line, packs]. */
  deliver(
    receivedOn: string,
    lines: readonly (readonly [OrderLine, number])[],
    role: Role = 'owner',
  ): Promise<Answer> {
    const body = {
      ...{ supplierId: this.small.supplier, receivedOn },
      lines: lines.map(([line, packs]) => ({
        ...{ presentationId: line.presentation.id, locationId: this.small.store, packs },
        ...{ packPrice: line.packPrice ?? '10', orderLineId: line.id },
        lotNumber: randomUUID().slice(0, 8),
      })),
    };
    return this.small.book.ask('POST', '/deliveries', body, role);
  }
}

/** The paths of the fields that an answer complains about. */
export function fieldsOf(answer: Answer): string[] {
  const { errors } = answer.body as { errors?: { field: string }[] };
  return (errors ?? []).map(({ field }) => field);
}
