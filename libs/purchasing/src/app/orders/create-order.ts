import { Injectable } from '@nestjs/common';
import { formatMoney, money } from '#lib/measure';
import { type Actor, type Claimed, Clock, newId, type Tx, UnitOfWork } from '#lib/platform';
import { addEvents, insertOrder, type ProposedLine } from '../../db/orders/orders.js';
import type { OrderDto } from '../../http/orders/order-answers.dto.js';
import type { NewOrderDto } from '../../http/orders/orders.dto.js';
import type { ProposalDto } from '../../http/proposals.dto.js';
import { ListProposals } from '../../queries/list-proposals.js';
import { freightByTerms } from '../../queries/orders/freight-by-terms.js';
import { OrderReader } from '../../queries/orders/order-reader.js';
import { checkSupplier, draftLines, goodsOf } from './draft-lines.js';
import { noteOf } from './order-steps.js';

/** As much of a proposal's sentence as an order keeps. */
const LONGEST_WHY = 4000;

/** Begins an order as a draft, by hand or from what is proposed today. */
@Injectable()
export class CreateOrder {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
    private readonly listProposals: ListProposals,
    private readonly reader: OrderReader,
  ) {}

  async run(actor: Actor, key: string, command: NewOrderDto): Promise<Claimed<OrderDto>> {
    const proposed = command.fromProposal
      ? await this.proposedToday(actor)
      : new Map<string, ProposedLine>();
    const operation = 'POST /api/orders';
    return this.uow.runOnce({ actor, key, operation, body: command }, (tx) =>
      this.create(tx, actor, command, proposed),
    );
  }

  private async create(
    tx: Tx,
    actor: Actor,
    command: NewOrderDto,
    proposed: ReadonlyMap<string, ProposedLine>,
  ): Promise<OrderDto> {
    const { supplierId } = command;
    await checkSupplier(tx, supplierId);
    const lines = await draftLines(tx, command.lines, proposed);
    const freight = command.freight ?? null;
    const by = { personId: actor.personId, at: this.clock.now() };
    const order = {
      ...{ id: newId(), supplierId, lines, note: noteOf(command) },
      reference: command.reference?.trim() ?? null,
      freight: formatMoney(
        freight === null ? await freightByTerms(tx, supplierId, goodsOf(lines)) : money(freight),
      ),
    };
    await insertOrder(tx, order, by);
    await addEvents(tx, order.id, [{ kind: 'created' }], by);
    return this.reader.get(tx, actor, order.id);
  }

  /** What is proposed of each pack, whichever supplier it is proposed from. */
  private async proposedToday(actor: Actor): Promise<ReadonlyMap<string, ProposedLine>> {
    const { orders } = await this.listProposals.run(actor);
    return new Map(orders.flatMap((basket) => basket.lines).flatMap(toProposed));
  }
}

function toProposed(line: ProposalDto): [string, ProposedLine][] {
  if (line.presentation === null) return [];
  const why = line.sentence.slice(0, LONGEST_WHY);
  return [[line.presentation.id, { packs: line.packs, why, figures: line.figures }]];
}
