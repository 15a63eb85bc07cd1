import {
  DateField,
  OutDate,
  OutDecimal,
  OutFlag,
  OutId,
  OutList,
  OutObject,
  OutTexts,
  OutWhole,
} from '#lib/platform';
import { UsedConsumableDto } from './visit-outputs.dto.js';

export class BookedUsageQuery {
  @DateField({ description: 'The first day.' })
  from: string;

  @DateField({ description: 'The last day; at most 62 days are answered.' })
  to: string;
}

export class BookedNeedDto {
  @OutObject(() => UsedConsumableDto)
  consumable: UsedConsumableDto;

  @OutDecimal({ description: 'By the templates, whole single doses; on average where it is open.' })
  quantity: string;
}

export class BookedVisitUsageDto {
  @OutId()
  id: string;

  @OutWhole({ description: 'So many visits of it are still to come.' })
  toCome: number;

  @OutWhole({ description: 'Chair time of one of them by the templates.' })
  minutes: number;

  @OutWhole({ description: 'In so many recorded ways it may turn out; 1: everything was said.' })
  ways: number;

  @OutFlag({ description: 'Its paste is not in the figures: nobody can tell the shade.' })
  shadeUnknown: boolean;

  @OutList(() => BookedNeedDto, { description: 'What one of them will use.' })
  lines: BookedNeedDto[];

  @OutTexts({ description: 'What was taken for granted, a sentence each.' })
  assumptions: string[];
}

export class BookedDayUsageDto {
  @OutDate()
  day: string;

  @OutWhole({ description: 'Visits still to come.' })
  visits: number;

  @OutWhole({ description: 'Those of them whose shade nobody can tell: their paste is left out.' })
  shadesUnknown: number;

  @OutWhole({ description: 'Chair time of all of them by the templates.' })
  minutes: number;

  @OutList(() => BookedNeedDto, { description: 'What all of them will use.' })
  lines: BookedNeedDto[];
}

export class BookedDaysUsageDto {
  @OutList(() => BookedDayUsageDto, { description: 'Days with visits still to come.' })
  days: BookedDayUsageDto[];
}
