import { STOCK_UNITS, type StockUnit } from '#lib/measure';
import {
  ChoiceField,
  DecimalField,
  IdField,
  ListField,
  OutChoice,
  OutDecimal,
  OutId,
  OutList,
  OutText,
  OutWhole,
  WholeField,
} from '#lib/platform';
import { MOST_PARTS } from '../domain/part-rules.js';
import { DISPENSINGS, type Dispensing } from '../domain/presentation-rules.js';

export class PartInputDto {
  @IdField({ description: "What it is; not the pack's own content." })
  consumableId: string;

  @ChoiceField(DISPENSINGS)
  dispensing: Dispensing;

  @WholeField(1, 100_000, { example: 1 })
  containersPerPack: number;

  @DecimalField({ above: '0', max: '1000000', description: 'In stock units.', example: '0.45' })
  contentPerContainer: string;

  @DecimalField({
    scale: 4,
    min: '0',
    max: '100',
    example: '25',
    description: "Of the pack's price, in percent; the pack's own content bears the rest.",
  })
  sharePercent: string;
}

export class PresentationPartsInputDto {
  @ListField(() => PartInputDto, {
    max: MOST_PARTS,
    description: 'All of them; an empty list: no kit.',
  })
  parts: PartInputDto[];
}

export class PartDto {
  @OutId()
  consumableId: string;

  @OutText()
  consumableName: string;

  @OutChoice(STOCK_UNITS)
  stockUnit: StockUnit;

  @OutChoice(DISPENSINGS)
  dispensing: Dispensing;

  @OutWhole()
  containersPerPack: number;

  @OutDecimal()
  contentPerContainer: string;

  @OutDecimal({ description: 'Of the price of the pack, in percent.' })
  sharePercent: string;
}

export class PresentationPartsDto {
  @OutDecimal({ description: "What the pack's own content bears, in percent." })
  ownSharePercent: string;

  @OutList(() => PartDto, { description: 'Empty when the pack is no kit.' })
  parts: readonly PartDto[];
}
