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
import { VOLUME_SOURCES } from '#lib/procedures';

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

export class SharedDoseDto {
  @OutWhole({ description: 'How many lines of the visit these doses serve.', example: 2 })
  lines: number;

  @OutDecimal({ description: 'What is charged for all of them: whole doses.', example: '0.25' })
  charged: string;
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

  @OutDecimal({ description: 'What leaves stock for it: whole single doses, or its part of them.' })
  charged: string;

  @OutObject(() => SharedDoseDto, {
    nullable: true,
    description: 'The single doses that it shares with other lines of the visit.',
  })
  sharedDose: SharedDoseDto | null;

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

export class OtherRestorationDto {
  @OutId()
  restorationId: string;

  @OutId()
  visitId: string;

  @OutDate()
  visitedOn: string;
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

  @OutChoice(VOLUME_SOURCES, {
    nullable: true,
    description: 'Where the volume comes from; null: recorded before that was kept.',
  })
  volumeSource: string | null;

  @OutDecimal({ nullable: true, description: 'Set where the volume comes from dimensions.' })
  lengthMm: string | null;

  @OutDecimal({ nullable: true })
  widthMm: string | null;

  @OutDecimal()
  depthMm: string;

  @OutWhole({ description: 'Depth by the layer thickness of the template.' })
  layers: number;

  @OutWhole({ description: 'Chair time.' })
  minutes: number;

  @OutWhole({ nullable: true, description: 'Time of assistants; null: not stated.' })
  assistantMinutes: number | null;

  @OutObject(() => OtherRestorationDto, {
    nullable: true,
    description: 'The earlier restoration that it does again: all that it costs is a retake.',
  })
  redoOf: OtherRestorationDto | null;

  @OutList(() => OtherRestorationDto, { description: 'Later restorations that do it again.' })
  redoneBy: OtherRestorationDto[];

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

  @OutFlag({ description: 'What the templates plan for anaesthesia was left out.' })
  withoutAnaesthetic: boolean;

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
