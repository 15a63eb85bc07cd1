import {
  ChoiceField,
  DateField,
  DecimalField,
  FlagField,
  IdField,
  ListField,
  TextField,
  WholeField,
} from '#lib/platform';
import { SPREAD_KEYS, type SpreadKey } from '../domain/land-delivery.js';

const ID = '0199c0de-0000-7000-8000-000000000001';
const NO_LOT = 'Leave out when the label states none.';

export class LotOfLineDto {
  @TextField(60, { optional: true, description: NO_LOT })
  lotNumber?: string | null;

  @DateField({ optional: true, description: NO_LOT })
  expiresOn?: string | null;

  @WholeField(1, 100_000, { example: 3, description: 'How many of the packs are of this lot.' })
  packs: number;
}

export class PartOfKitDto {
  @IdField({ description: 'Which part of the kit.' })
  consumableId: string;

  @TextField(60, { optional: true, description: "Leave out when it has the kit's number." })
  lotNumber?: string | null;

  @DateField({ optional: true, description: "Leave out when it has the kit's date." })
  expiresOn?: string | null;
}

export class DeliveryLineInputDto {
  @IdField({ example: ID })
  presentationId: string;

  @WholeField(1, 100_000, { example: 3 })
  packs: number;

  @DecimalField({ min: '0', max: '1000000', example: '72.00', description: 'Paid per pack.' })
  packPrice: string;

  @IdField({ description: 'Where the goods are put.' })
  locationId: string;

  @TextField(60, { optional: true, description: `${NO_LOT} Of a kit: the number on its box.` })
  lotNumber?: string | null;

  @DateField({ optional: true, description: NO_LOT })
  expiresOn?: string | null;

  @IdField({ optional: true, description: 'The line of an order that this line answers.' })
  orderLineId?: string | null;

  @FlagField({
    optional: true,
    description:
      'A free sample: its price is 0, it bears no freight and is no price to compare with.',
  })
  sample?: boolean | null;

  @DecimalField({
    optional: true,
    above: '0',
    max: '100000000',
    example: '450',
    description: 'Of the whole line, in grams; wanted of every line when costs go by weight.',
  })
  weightGrams?: string | null;

  @ListField(() => LotOfLineDto, {
    optional: true,
    max: 50,
    description: 'Where the packs of the line are of several lots; then packs is their sum.',
  })
  lots?: LotOfLineDto[] | null;

  @ListField(() => PartOfKitDto, {
    optional: true,
    max: 50,
    description: 'Of a kit or a mixed box: the lots of its parts, where they have their own.',
  })
  parts?: PartOfKitDto[] | null;
}

export const FAULT_KINDS = ['damaged', 'missing'] as const;

export class DeliveryFaultInputDto {
  @IdField()
  presentationId: string;

  @ChoiceField(FAULT_KINDS)
  kind: (typeof FAULT_KINDS)[number];

  @WholeField(1, 100_000, { example: 1 })
  packs: number;

  @TextField(60, { optional: true, description: 'Of damaged goods, so that they can be traced.' })
  lotNumber?: string | null;

  @IdField({ optional: true, description: 'The line of an order that this would have answered.' })
  orderLineId?: string | null;

  @TextField(300, { optional: true, example: 'Box wet, seal broken.' })
  note?: string | null;
}

export class ReceiveDeliveryDto {
  @IdField()
  supplierId: string;

  @DateField()
  receivedOn: string;

  @TextField(80, { optional: true, example: 'DN-2041' })
  reference?: string | null;

  @DecimalField({ optional: true, min: '0', max: '1000000', example: '6.90' })
  freight?: string;

  @DecimalField({ optional: true, min: '0', max: '1000000', example: '0' })
  duty?: string;

  @DecimalField({ optional: true, min: '0', max: '1000000', example: '0' })
  discount?: string;

  @ChoiceField(SPREAD_KEYS, { optional: true, description: 'How freight and duty are spread.' })
  spreadKey?: SpreadKey;

  @ListField(() => DeliveryLineInputDto, { max: 500 })
  lines: DeliveryLineInputDto[];

  @ListField(() => DeliveryFaultInputDto, {
    optional: true,
    max: 500,
    description: 'Packs on the paper that came damaged or not at all; they never become stock.',
  })
  faults?: DeliveryFaultInputDto[] | null;
}
