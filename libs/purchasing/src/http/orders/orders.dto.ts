import {
  ChoiceField,
  DateField,
  DecimalField,
  FlagField,
  IdField,
  ListField,
  PageQuery,
  TextField,
  WholeField,
} from '#lib/platform';
import { SENDING_WAYS, type SendingWay } from '../../db/orders/orders.js';
import { ORDER_STATES } from '../../domain/orders/order-life.js';

const MOST_LINES = 200;

/** A line of a new order, or of an order as it should become. */
export class OrderedLineDto {
  @IdField({ description: 'A pack of this presentation.' })
  presentationId: string;

  @WholeField(1, 100_000, { example: 2 })
  packs: number;

  @DecimalField({
    optional: true,
    min: '0',
    description: 'Expected for a pack. Left out: what was paid last, or else the list price.',
  })
  packPrice?: string | null;
}

export class NewOrderDto {
  @IdField()
  supplierId: string;

  @ListField(() => OrderedLineDto, { min: 1, max: MOST_LINES })
  lines: OrderedLineDto[];

  @FlagField({
    optional: true,
    description: "True: the lines remember what today's proposal said of them, and why.",
  })
  fromProposal?: boolean;

  @TextField(80, { optional: true, description: "The supplier's own number of the order." })
  reference?: string | null;

  @TextField(1000, { optional: true, description: 'Printed on the order.' })
  note?: string | null;

  @DecimalField({ optional: true, min: '0', description: "Left out: by the supplier's terms." })
  freight?: string | null;
}

export class ChangedLineDto extends OrderedLineDto {
  @IdField({ optional: true, description: 'Of a line that stays; left out for a new one.' })
  id?: string | null;
}

class SeenVersion {
  @WholeField(1, 2_000_000_000, { description: 'Of the order as it was seen.', example: 1 })
  version: number;
}

export class OrderChangesDto extends SeenVersion {
  @IdField()
  supplierId: string;

  @ListField(() => ChangedLineDto, { min: 1, max: MOST_LINES })
  lines: ChangedLineDto[];

  @TextField(80, { optional: true })
  reference?: string | null;

  @TextField(1000, { optional: true })
  note?: string | null;

  @DecimalField({ optional: true, min: '0', description: "Left out: by the supplier's terms." })
  freight?: string | null;
}

/** For everything that is done with an order and needs no more than a remark. */
export class OrderActDto extends SeenVersion {
  @TextField(1000, { optional: true })
  note?: string | null;
}

export class OrderSendingDto extends SeenVersion {
  @ChoiceField(SENDING_WAYS, {
    description: 'e-mail: sent by the service; print and by hand: sent by people.',
  })
  way: SendingWay;

  @TextField(254, { optional: true, description: "For e-mail. Left out: the supplier's address." })
  to?: string | null;

  @DateField({
    optional: true,
    description: 'When people sent it, where that was earlier; never for e-mail. Left out: today.',
  })
  orderedOn?: string | null;

  @DateField({ optional: true, description: 'Left out: reckoned from the lead time.' })
  expectedOn?: string | null;
}

export const CHASING_WAYS = ['e-mail', 'by phone'] as const;

export class OrderChasingDto extends OrderActDto {
  @ChoiceField(CHASING_WAYS)
  way: (typeof CHASING_WAYS)[number];

  @TextField(254, { optional: true, description: "For e-mail. Left out: the supplier's address." })
  to?: string | null;
}

export class MissingPacksDto {
  @IdField({ description: 'A line of the order.' })
  lineId: string;

  @WholeField(1, 100_000, { description: 'Outstanding packs that will not come.' })
  packs: number;
}

export class SupplierAnswerDto extends OrderActDto {
  @DateField({ optional: true, description: 'The day the supplier now names.' })
  expectedOn?: string | null;

  @TextField(80, { optional: true, description: "The supplier's own number of the order." })
  reference?: string | null;

  @ListField(() => MissingPacksDto, { optional: true, max: MOST_LINES })
  willNotCome?: MissingPacksDto[] | null;
}

export class OrderQueryDto extends PageQuery {
  @ChoiceField([...ORDER_STATES, 'open'], {
    optional: true,
    description: 'open: draft, approved or sent.',
  })
  state?: string;

  @IdField({ optional: true })
  supplierId?: string;

  @ChoiceField(['true', 'false'], {
    optional: true,
    description: 'True: only orders that are late.',
  })
  overdue?: string;
}
