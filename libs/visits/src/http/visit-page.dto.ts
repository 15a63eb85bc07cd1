import {
  OutDate,
  OutDecimal,
  OutFlag,
  OutId,
  OutList,
  OutObject,
  OutText,
  OutWhole,
} from '#lib/platform';
import { NamedDto } from './visit-outputs.dto.js';

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
