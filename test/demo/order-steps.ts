import type { INestApplicationContext } from '@nestjs/common';
import type { Actor } from '#lib/platform';
import { ApproveOrder, CreateOrder, FollowOrder, SendOrder } from '#lib/purchasing';
import { consumableOf, presentationId } from './catalogue.js';
import { demoId } from './dice.js';
import type { SupplierKey } from './practice.js';
import type { OrderedPacks, SentOrder, StepOf } from './steps.js';

type Placed = Awaited<ReturnType<SendOrder['run']>>['body'];

/** Orders of the demo, by the manager; each call has a key of its own below that of the step. */
export class OrderSteps {
  constructor(
    private readonly app: INestApplicationContext,
    private readonly manager: Actor,
  ) {}

  async run({ payload }: StepOf<'order'>, key: string): Promise<unknown> {
    const { upTo, chased, supplier, lines, note } = payload;
    if (upTo === 'draft') return this.create(key, supplier, lines, note);
    const draft = await this.create(`${key}/begun`, supplier, lines, note);
    const { id, version } = draft;
    const follow = this.get(FollowOrder);
    if (upTo === 'cancelled') {
      const why = 'Bought at the fair instead.';
      return follow.cancel(this.manager, key, id, { version, note: why });
    }
    const approve = this.get(ApproveOrder);
    if (upTo === 'approved') return approve.approve(this.manager, key, id, { version });
    if (chased === undefined) return this.send(key, draft, upTo);
    const sent = await this.send(`${key}/sent`, draft, upTo);
    const asked = { version: sent.version, way: 'by phone', note: chased } as const;
    return follow.chase(this.manager, key, id, asked);
  }

  /** Sends an order by hand; answers the id of the line of each consumable. */
  async place(
    key: string,
    supplier: SupplierKey,
    order: SentOrder,
  ): Promise<ReadonlyMap<string, string>> {
    const draft = await this.create(`${key}/begun`, supplier, order.lines, null);
    const { lines } = await this.send(`${key}/ordered`, draft, order);
    return new Map(lines.map((line) => [line.presentation.id, line.id]));
  }

  private async create(
    key: string,
    supplier: SupplierKey,
    lines: readonly OrderedPacks[],
    note: string | null,
  ): Promise<Placed> {
    const { body } = await this.get(CreateOrder).run(this.manager, key, {
      supplierId: demoId('supplier', supplier),
      lines: lines.map(({ consumable, packs }) => ({
        ...{ presentationId: presentationId(consumable, consumableOf(consumable).packs[0]), packs },
      })),
      note,
    });
    return body;
  }

  private async send(
    key: string,
    { id, version }: Placed,
    { orderedOn, expectedOn }: Omit<SentOrder, 'lines'>,
  ): Promise<Placed> {
    const approve = this.get(ApproveOrder);
    const approved = await approve.approve(this.manager, `${key}/approved`, id, { version });
    const sending = {
      version: approved.body.version,
      way: 'by hand',
      orderedOn,
      expectedOn,
    } as const;
    return (await this.get(SendOrder).run(this.manager, key, id, sending)).body;
  }

  private get<T>(useCase: new (...args: never[]) => T): T {
    return this.app.get<T>(useCase, { strict: false });
  }
}
