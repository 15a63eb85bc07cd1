import {
  CAVITY_CLASSES,
  CAVITY_SIZES,
  type CavityClass,
  type CavitySize,
  REASONS,
  type Reason,
  TOOTH_NOTATIONS,
  type ToothNotation,
} from '#lib/dentition';
import {
  ChoiceField,
  DateField,
  IdField,
  IdListField,
  ListField,
  OutChoice,
  OutDate,
  OutFlag,
  OutId,
  OutInstant,
  OutList,
  OutObject,
  OutText,
  OutWhole,
  PageQuery,
  TextField,
  WholeField,
} from '#lib/platform';
import {
  BOOKED_STATES,
  LONGEST_CHART,
  LONGEST_REFERENCE,
  MOST_ALIKE,
  MOST_RESTORATIONS,
} from '../domain/booked-visit.js';
import { NamedDto } from './visit-outputs.dto.js';

const LIKE_RECORDED = 'As lately recorded by the same template when left out.';

class BookedRestorationInputDto {
  @IdField({ description: 'The procedure template it will follow.' })
  templateId: string;

  @TextField(3, { optional: true, description: LIKE_RECORDED, example: '11' })
  tooth?: string | null;

  @TextField(12, {
    optional: true,
    description: `With a tooth only. ${LIKE_RECORDED}`,
    example: 'MI',
  })
  surfaces?: string | null;

  @ChoiceField(CAVITY_CLASSES, {
    optional: true,
    description: `With surfaces only. ${LIKE_RECORDED}`,
  })
  cavityClass?: CavityClass | null;

  @ChoiceField(CAVITY_SIZES, { optional: true, description: 'Medium where nothing says more.' })
  size?: CavitySize | null;

  @ChoiceField(REASONS, { optional: true, description: LIKE_RECORDED })
  reason?: Reason | null;

  @IdListField({ optional: true, max: 8, description: `The shades. ${LIKE_RECORDED}` })
  shades?: string[] | null;
}

const SEEN = { description: 'Of the booked visit as it was seen.', example: 1 };

class BookingDto {
  @DateField({ description: 'The day it is booked for.' })
  day: string;

  @TextField(LONGEST_CHART, {
    optional: true,
    description: 'The chart reference and nothing else about the patient.',
  })
  chartReference?: string | null;

  @IdField({ optional: true })
  dentistId?: string | null;

  @IdField({ optional: true, description: 'The room.' })
  locationId?: string | null;

  @WholeField(1, MOST_ALIKE, {
    optional: true,
    description: 'So many visits of this kind on the day, 1 when left out; more need no chart.',
  })
  alike?: number | null;

  @ChoiceField(TOOTH_NOTATIONS, {
    optional: true,
    description: "ISO 3950 or Universal numbers; the practice's setting when left out.",
  })
  toothNotation?: ToothNotation | null;

  @ListField(() => BookedRestorationInputDto, { min: 1, max: MOST_RESTORATIONS })
  restorations: BookedRestorationInputDto[];
}

/** What may be changed of a booking. */
export class ChangeBookedVisitDto extends BookingDto {
  @WholeField(1, 2_000_000_000, SEEN)
  version: number;
}

export class BookVisitDto extends BookingDto {
  @TextField(LONGEST_REFERENCE, {
    optional: true,
    description: 'Its name in another list; at most one booking has it.',
  })
  externalReference?: string | null;
}

export class DropBookedVisitDto {
  @WholeField(1, 2_000_000_000, SEEN)
  version: number;

  @TextField(500, { description: 'Why it will not take place.' })
  note: string;
}

export const BOOKED_FILTERS = ['booked', 'not recorded yet', 'kept', 'dropped'] as const;

export class BookedVisitQuery extends PageQuery {
  @DateField({ optional: true })
  from?: string;

  @DateField({ optional: true })
  to?: string;

  @ChoiceField(BOOKED_FILTERS, {
    optional: true,
    description: 'Not recorded yet: the day has passed, and it was neither kept nor dropped.',
  })
  state?: (typeof BOOKED_FILTERS)[number];
}

export class BookedShadeDto extends NamedDto {
  @OutText({ nullable: true })
  shade: string | null;
}

export class BookedRestorationDto {
  @OutObject(() => NamedDto)
  template: NamedDto;

  @OutText({ nullable: true, example: '11' })
  tooth: string | null;

  @OutText({ nullable: true, example: 'MI' })
  surfaces: string | null;

  @OutChoice(CAVITY_CLASSES, { nullable: true })
  cavityClass: CavityClass | null;

  @OutChoice(CAVITY_SIZES, { nullable: true })
  size: CavitySize | null;

  @OutChoice(REASONS, { nullable: true })
  reason: Reason | null;

  @OutList(() => BookedShadeDto)
  shades: BookedShadeDto[];
}

export class KeptVisitDto {
  @OutId()
  id: string;

  @OutDate()
  visitedOn: string;
}

export class DroppedDto {
  @OutText()
  note: string;

  @OutText()
  by: string;

  @OutInstant()
  at: string;
}

export class BookedVisitDto {
  @OutId()
  id: string;

  @OutDate()
  day: string;

  @OutText({ nullable: true })
  chartReference: string | null;

  @OutObject(() => NamedDto, { nullable: true })
  dentist: NamedDto | null;

  @OutObject(() => NamedDto, { nullable: true })
  location: NamedDto | null;

  @OutText({ nullable: true })
  externalReference: string | null;

  @OutWhole({ description: 'So many visits of this kind.' })
  alike: number;

  @OutWhole({ description: 'So many of them are recorded.' })
  kept: number;

  @OutChoice(BOOKED_STATES)
  state: string;

  @OutWhole({ description: 'Raised by every change; who changes it names the one that was seen.' })
  version: number;

  @OutFlag({ description: 'The day has passed, and it was neither kept nor dropped.' })
  notRecordedYet: boolean;

  @OutList(() => BookedRestorationDto)
  restorations: BookedRestorationDto[];

  @OutList(() => KeptVisitDto, { description: 'The visits that kept it.' })
  visits: KeptVisitDto[];

  @OutObject(() => DroppedDto, { nullable: true })
  dropped: DroppedDto | null;

  @OutText()
  bookedBy: string;

  @OutInstant()
  bookedAt: string;
}

export class BookedVisitPageDto {
  @OutList(() => BookedVisitDto)
  items: BookedVisitDto[];

  @OutText({ nullable: true, description: 'Asks for the next page; null on the last one.' })
  nextCursor: string | null;
}
