import {
  ChoiceField,
  DateField,
  DecimalField,
  FlagField,
  IdField,
  OutDate,
  OutFlag,
  OutId,
  OutInstant,
  OutList,
  OutObject,
  OutText,
  TextField,
  WholeField,
} from '#lib/platform';
import { SERVICE_MEASURES, type ServiceMeasure } from '../domain/policy/index.js';

const LEVEL = { above: '0', max: '0.9999' };

/** Read and written alike. */
export class PlanningSettingsDto {
  @ChoiceField(SERVICE_MEASURES, {
    description:
      'cycle service: the chance that nothing is missing between an order and its delivery; ' +
      'fill rate: the share of use that is met from the shelf.',
  })
  serviceMeasure: ServiceMeasure;

  @DecimalField({ ...LEVEL, example: '0.95' })
  serviceLevel: string;

  @WholeField(0, 90, { description: 'Days between two looks at what to order.' })
  reviewDays: number;

  @DecimalField({
    ...LEVEL,
    example: '0.9',
    description: 'Wanted chance that what is ordered is used before it expires.',
  })
  expiryCertainty: string;

  @DecimalField({
    above: '0',
    max: '5',
    example: '0.2',
    description: 'What keeping goods for a year costs, as a share of their price.',
  })
  carryingRate: string;

  @DecimalField({
    min: '0',
    example: '5.00',
    description: 'What a line of an order costs in work, where a supplier has no terms for it.',
  })
  orderCost: string;

  @WholeField(0, 250, {
    description: 'Working days until a delivery, where a supplier has no terms for it.',
  })
  leadDays: number;

  @FlagField({ description: 'True: what retakes use is no reason to order.' })
  leaveOutRetakes: boolean;
}

export class ConsumablePlanningDto {
  @ChoiceField(SERVICE_MEASURES, { optional: true, description: 'Null: as the practice has it.' })
  serviceMeasure?: ServiceMeasure | null;

  @DecimalField({ ...LEVEL, optional: true, description: 'Set together with the measure.' })
  serviceLevel?: string | null;

  @WholeField(0, 90, { optional: true })
  reviewDays?: number | null;

  @DecimalField({ ...LEVEL, optional: true })
  expiryCertainty?: string | null;

  @DecimalField({ min: '0', optional: true, description: 'Used instead of the reckoned one.' })
  reorderAt?: string | null;

  @DecimalField({ min: '0', optional: true, description: 'Used instead of the reckoned one.' })
  orderUpTo?: string | null;

  @DecimalField({
    above: '0',
    optional: true,
    description: 'The most that fits on the shelf, what is there and on its way included.',
  })
  shelfRoom?: string | null;

  @TextField(500, { optional: true, example: 'Two courses in May.' })
  note?: string | null;
}

export class ConsumablePlanningAnswerDto {
  @OutId()
  consumableId: string;

  @OutObject(() => ConsumablePlanningDto, { description: 'What it has of its own.' })
  own: ConsumablePlanningDto;

  @OutObject(() => PlanningSettingsDto, { description: 'What holds for it.' })
  inForce: PlanningSettingsDto;
}

export class NewOneOffDto {
  @IdField()
  consumableId: string;

  @DateField()
  firstDay: string;

  @DateField({ description: 'Included; the first day itself for a single day.' })
  lastDay: string;

  @TextField(500, { example: 'Course for colleagues.' })
  note: string;
}

export class OneOffDto {
  @OutId()
  id: string;

  @OutId()
  consumableId: string;

  @OutDate()
  firstDay: string;

  @OutDate()
  lastDay: string;

  @OutText()
  note: string;

  @OutText({ description: 'Who marked it.' })
  by: string;

  @OutInstant()
  madeAt: string;

  @OutFlag({ description: 'True: taken back; the use counts again.' })
  withdrawn: boolean;
}

export class OneOffListDto {
  @OutList(() => OneOffDto, { description: 'The latest days first.' })
  marks: OneOffDto[];
}
