import { TOOTH_NOTATIONS } from '#lib/dentition';
import {
  ChoiceField,
  COST_SHARE_KEYS,
  type CostShareKey,
  DateField,
  DecimalField,
  FlagField,
  IdField,
  ListField,
  TextField,
  WholeField,
} from '#lib/platform';
import { RestorationDto } from '#lib/procedures';

const ID = '0199c0de-0000-7000-8000-000000000001';

export class UsageEntryDto {
  @TextField(160, {
    optional: true,
    description: 'Key of the planned line that this changes; left out for a line added by hand.',
    example: `r1/a1/4/${ID}`,
  })
  line?: string | null;

  @WholeField(0, 31, {
    optional: true,
    description:
      'For an added line: the restoration it is for, 0 is the first. Left out: the visit.',
  })
  restoration?: number | null;

  @WholeField(1, 10, { optional: true, description: 'For an added line: the attempt, from 1.' })
  attempt?: number | null;

  @IdField({ optional: true, description: 'What was used instead, or what was used in addition.' })
  consumableId?: string | null;

  @DecimalField({ optional: true, min: '0', max: '100000', example: '0.04' })
  placed?: string | null;

  @DecimalField({ optional: true, min: '0', max: '100000', example: '0.06' })
  dispensed?: string | null;
}

export class ScannedDto {
  @IdField({ description: 'A lot that was scanned: it is used first.' })
  lotId: string;

  @IdField({ optional: true, description: 'The container of it, when that was scanned.' })
  holdingId?: string | null;
}

/** One restoration of a visit that takes place. */
export class VisitRestorationInputDto extends RestorationDto {
  @IdField({
    optional: true,
    description:
      'An earlier restoration of the same tooth and chart that this one does again: all that it ' +
      'costs is a retake.',
  })
  redoOf?: string | null;
}

export class PlanVisitDto {
  @DateField()
  visitedOn: string;

  @IdField({ description: 'The room: stock is taken from there, then from its parents.' })
  locationId: string;

  @WholeField(1, 10, { optional: true, description: 'People at the chair, 2 when left out.' })
  staffCount?: number | null;

  @ChoiceField(COST_SHARE_KEYS, {
    optional: true,
    description: "How shared cost is split; the practice's setting when left out.",
  })
  costShareKey?: CostShareKey | null;

  @ChoiceField(TOOTH_NOTATIONS, {
    optional: true,
    description: "ISO 3950 or Universal numbers; the practice's setting when left out.",
  })
  toothNotation?: 'iso' | 'universal' | null;

  @FlagField({
    optional: true,
    description: 'Leaves out what the templates plan for anaesthesia.',
  })
  withoutAnaesthetic?: boolean | null;

  @WholeField(0, 1440, {
    optional: true,
    description:
      'Chair time of the whole visit: what no restoration states is divided by what the templates ' +
      'plan. Those add up when left out.',
  })
  minutes?: number | null;

  @WholeField(0, 1440, { optional: true, description: 'The same for the time of assistants.' })
  assistantMinutes?: number | null;

  @ListField(() => VisitRestorationInputDto, { min: 1, max: 32 })
  restorations: VisitRestorationInputDto[];

  @ListField(() => UsageEntryDto, {
    optional: true,
    max: 300,
    description: 'Where it differed from the plan, or what was used in addition.',
  })
  usage?: UsageEntryDto[] | null;

  @ListField(() => ScannedDto, { optional: true, max: 100 })
  scanned?: ScannedDto[] | null;
}

export class PostVisitDto extends PlanVisitDto {
  @IdField({ optional: true, description: 'May be made by the client.' })
  id?: string | null;

  @TextField(60, { description: 'The chart reference and nothing else about the patient.' })
  chartReference: string;

  @IdField()
  dentistId: string;

  @IdField({ optional: true, description: 'The booked visit that this one keeps.' })
  bookedVisitId?: string | null;
}
