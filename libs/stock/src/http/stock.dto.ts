import {
  ChoiceField,
  DateField,
  DecimalField,
  IdField,
  ListField,
  OutChoice,
  OutDate,
  OutDecimal,
  OutId,
  OutList,
  OutTexts,
  TextField,
} from '#lib/platform';
import { WASTE_REASONS } from '../db/stock-changes.js';
import { LOT_STATUSES } from '../domain/candidate.js';

export class ReversalDto {
  @TextField(300, { example: 'Entered for the wrong chart.' })
  note: string;
}

export class MoveStockDto {
  @IdField()
  holdingId: string;

  @IdField()
  toLocationId: string;

  @DecimalField({ above: '0', description: 'In stock units; an opened container moves whole.' })
  quantity: string;

  @DateField({ optional: true, description: 'Today when left out.' })
  occurredOn?: string;
}

export class OpenContainerDto {
  @IdField()
  holdingId: string;

  @DateField({ optional: true, description: 'Today when left out.' })
  openedOn?: string;
}

export class WriteOffDto {
  @IdField()
  holdingId: string;

  @DecimalField({ above: '0' })
  quantity: string;

  @ChoiceField(WASTE_REASONS)
  reason: (typeof WASTE_REASONS)[number];

  @TextField(300, { optional: true })
  note?: string | null;

  @DateField({ optional: true, description: 'Today when left out.' })
  occurredOn?: string;
}

export class ReturnStockDto {
  @IdField()
  holdingId: string;

  @DecimalField({ above: '0' })
  quantity: string;

  @TextField(300, { example: 'Sent back to the supplier: recalled.' })
  note: string;

  @DateField({ optional: true })
  occurredOn?: string;
}

export class CountLineDto {
  @IdField()
  holdingId: string;

  @DecimalField({ min: '0', description: 'What is really there, in stock units.' })
  counted: string;
}

export class CountStockDto {
  @DateField({ optional: true, description: 'Today when left out.' })
  countedOn?: string;

  @ListField(() => CountLineDto, { min: 1, max: 500 })
  lines: CountLineDto[];
}

export class LotStatusDto {
  @ChoiceField(LOT_STATUSES)
  status: (typeof LOT_STATUSES)[number];

  @TextField(300, { example: 'Notice of the maker of 4 May.' })
  note: string;
}

export class BookedDto {
  @OutTexts({ description: 'The movements that were booked.' })
  movementIds: string[];

  @OutId({ description: 'The holding in which the goods are now, or from which they left.' })
  holdingId: string;
}

export class CountedLineDto {
  @OutId()
  holdingId: string;

  @OutDecimal({ description: 'What the book expected.' })
  expected: string;

  @OutDecimal()
  counted: string;

  @OutDecimal({ description: 'Counted less expected.' })
  difference: string;
}

export class CountDto {
  @OutDate()
  countedOn: string;

  @OutList(() => CountedLineDto)
  lines: CountedLineDto[];

  @OutTexts()
  movementIds: string[];
}

export class KitLotStatusAnswerDto {
  @OutId()
  kitLotId: string;

  @OutChoice(LOT_STATUSES)
  status: string;

  @OutTexts({ description: 'The lots of its parts, all of that status now.' })
  lotIds: string[];
}

export class LotStatusAnswerDto {
  @OutId()
  lotId: string;

  @OutChoice(LOT_STATUSES)
  status: string;
}
