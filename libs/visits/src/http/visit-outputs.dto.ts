import { CAVITY_CLASSES, REASONS, TOOTH_NOTATIONS } from '#lib/dentition';
import {
  COST_SHARE_KEYS,
  OutChoice,
  OutDate,
  OutDecimal,
  OutFlag,
  OutId,
  OutInstant,
  OutList,
  OutObject,
  OutText,
  OutTexts,
  OutWhole,
} from '#lib/platform';

const SURENESS = ['scanned', 'open container', 'assumed', 'not stated'];

export class NamedDto {
  @OutId()
  id: string;

  @OutText()
  name: string;
}

export class TakenDto {
  @OutId({ nullable: true, description: 'The movement; null in a preview.' })
  movementId: string | null;

  @OutId()
  layerId: string;

  @OutId()
  lotId: string;

  @OutText({ nullable: true, description: 'Null: not stated on the label.' })
  lotNumber: string | null;

  @OutDecimal({ description: 'What left stock, in stock units.' })
  quantity: string;

  @OutDecimal()
  cost: string;

  @OutChoice(SURENESS, { description: 'How sure it is that this lot was used.' })
  sureness: string;

  @OutFlag({ description: 'Scanned, though another lot would have been first.' })
  outOfOrder: boolean;
}

export class UsedConsumableDto extends NamedDto {
  @OutText({ nullable: true })
  shade: string | null;

  @OutText()
  category: string;

  @OutText({ example: 'g' })
  unit: string;
}

export class UsageLineDto {
  @OutId({ nullable: true, description: 'Null in a preview.' })
  id: string | null;

  @OutText({ nullable: true, description: 'Key of the planned line in a preview, else null.' })
  line: string | null;

  @OutWhole({ nullable: true, description: 'The restoration, from 0; null when shared.' })
  restoration: number | null;

  @OutText({ nullable: true, description: 'Shared by the restorations of this tooth.' })
  tooth: string | null;

  @OutWhole({ description: 'From 2 on a retake.' })
  attempt: number;

  @OutObject(() => UsedConsumableDto)
  consumable: UsedConsumableDto;

  @OutText({ nullable: true, description: 'What its amount is counted by; null: added by hand.' })
  driver: string | null;

  @OutDecimal({ description: 'What the template plans to take out of the container.' })
  planned: string;

  @OutDecimal({ description: 'In the tooth.' })
  placed: string;

  @OutDecimal({ description: 'Out of the container.' })
  dispensed: string;

  @OutDecimal({ description: 'What leaves stock: whole single doses.' })
  charged: string;

  @OutDecimal()
  cost: string;

  @OutDecimal({ description: 'What the book had no stock for and has not yet.' })
  shortfall: string;

  @OutList(() => TakenDto)
  taken: TakenDto[];
}

export class RestorationCostDto {
  @OutDecimal({ description: 'Its own lines.' })
  own: string;

  @OutDecimal({ description: 'Its share of what the tooth and the visit used.' })
  shared: string;

  @OutDecimal({ description: 'The part of it that later attempts cost.' })
  retake: string;

  @OutDecimal({ description: 'Own and shared.' })
  total: string;
}

export class VisitRestorationDto {
  @OutId({ nullable: true, description: 'Null in a preview.' })
  id: string | null;

  @OutText({ example: '21' })
  tooth: string;

  @OutText({ example: 'MI' })
  surfaces: string;

  @OutChoice(CAVITY_CLASSES, { nullable: true })
  cavityClass: string | null;

  @OutChoice(REASONS)
  reason: string;

  @OutObject(() => NamedDto)
  template: NamedDto;

  @OutWhole()
  templateVersion: number;

  @OutTexts({ description: 'Ids of the shades.' })
  shades: string[];

  @OutWhole()
  attempts: number;

  @OutWhole()
  cycles: number;

  @OutDecimal({ description: 'Of the cavity, in mm3; a planning value unless it was entered.' })
  volumeMm3: string;

  @OutDecimal()
  depthMm: string;

  @OutWhole({ description: 'Chair time.' })
  minutes: number;

  @OutObject(() => RestorationCostDto)
  cost: RestorationCostDto;
}

export class VisitPreviewDto {
  @OutDate()
  visitedOn: string;

  @OutObject(() => NamedDto)
  location: NamedDto;

  @OutWhole()
  staffCount: number;

  @OutChoice(COST_SHARE_KEYS)
  costShareKey: string;

  @OutChoice(TOOTH_NOTATIONS)
  toothNotation: string;

  @OutText({ example: 'EUR', description: 'ISO 4217.' })
  currency: string;

  @OutDecimal({ description: 'What the visit cost in materials.' })
  materialCost: string;

  @OutDecimal({ description: 'The part of it that later attempts cost.' })
  retakeCost: string;

  @OutFlag({ description: 'Part of the cost is a shortfall at the last known cost.' })
  estimated: boolean;

  @OutList(() => VisitRestorationDto)
  restorations: VisitRestorationDto[];

  @OutList(() => UsageLineDto)
  usage: UsageLineDto[];
}

export class VisitReversalDto {
  @OutInstant()
  reversedAt: string;

  @OutText()
  reversedBy: string;

  @OutText()
  note: string;
}

export class VisitDto extends VisitPreviewDto {
  @OutId()
  id: string;

  @OutText()
  chartReference: string;

  @OutObject(() => NamedDto)
  dentist: NamedDto;

  @OutInstant()
  recordedAt: string;

  @OutText()
  recordedBy: string;

  @OutObject(() => VisitReversalDto, { nullable: true })
  reversal: VisitReversalDto | null;
}

export class VisitSummaryDto {
  @OutId()
  id: string;

  @OutDate()
  visitedOn: string;

  @OutText()
  chartReference: string;

  @OutObject(() => NamedDto)
  dentist: NamedDto;

  @OutObject(() => NamedDto)
  location: NamedDto;

  @OutText({ example: '11 M decay, 21 MI cosmetic' })
  restorations: string;

  @OutWhole()
  restorationCount: number;

  @OutDecimal()
  materialCost: string;

  @OutFlag()
  estimated: boolean;

  @OutFlag()
  reversed: boolean;
}

export class VisitPageDto {
  @OutList(() => VisitSummaryDto)
  items: VisitSummaryDto[];

  @OutText({ nullable: true, description: 'Asks for the next page; null on the last one.' })
  nextCursor: string | null;
}
