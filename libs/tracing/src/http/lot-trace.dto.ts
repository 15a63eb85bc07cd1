import {
  OutChoice,
  OutDate,
  OutDecimal,
  OutId,
  OutList,
  OutObject,
  OutText,
  OutWhole,
} from '#lib/platform';
import { MassBalanceDto, StockPlaceDto } from '#lib/stock';
import { LotDto } from './lot.dto.js';
import { SURENESS, TracedShortfallDto, VisitTracePageDto } from './trace.dto.js';

export class TracedHoldingDto {
  @OutId()
  holdingId: string;

  @OutId()
  layerId: string;

  @OutObject(() => StockPlaceDto)
  location: StockPlaceDto;

  @OutDecimal()
  onHand: string;

  @OutDate({ nullable: true, description: 'Null while sealed.' })
  openedOn: string | null;

  @OutDate({ nullable: true })
  effectiveExpiry: string | null;
}

export class TracedMovementDto {
  @OutId()
  movementId: string;

  @OutId()
  layerId: string;

  @OutDate()
  occurredOn: string;

  @OutDecimal({ description: 'At a count: missing is more than 0, found is less.' })
  quantity: string;

  @OutText({ nullable: true, example: 'Store' })
  from: string | null;

  @OutText({ nullable: true, example: 'Room 2' })
  to: string | null;

  @OutText({ nullable: true, description: 'Why it was thrown away.' })
  reason: string | null;

  @OutText({ nullable: true })
  note: string | null;
}

export class SurenessTotalDto {
  @OutChoice(SURENESS)
  sureness: string;

  @OutDecimal()
  quantity: string;
}

export class AffectedDto {
  @OutWhole({ description: 'Visits that used it and were not reversed.' })
  visits: number;

  @OutWhole({ description: 'Chart references among them.' })
  charts: number;

  @OutWhole({ description: 'Restorations that may have got it.' })
  restorations: number;

  @OutList(() => SurenessTotalDto)
  bySureness: SurenessTotalDto[];
}

export class LotTraceDto {
  @OutObject(() => LotDto)
  lot: LotDto;

  @OutObject(() => MassBalanceDto, { description: 'Of all layers together.' })
  mass: MassBalanceDto;

  @OutObject(() => AffectedDto)
  affected: AffectedDto;

  @OutList(() => TracedHoldingDto, { description: 'Where it is now.' })
  onHand: TracedHoldingDto[];

  @OutObject(() => VisitTracePageDto, { description: 'Who may have got it, the earliest first.' })
  visits: VisitTracePageDto;

  @OutList(() => TracedMovementDto, { description: 'Carried elsewhere, or opened.' })
  moves: TracedMovementDto[];

  @OutList(() => TracedMovementDto)
  waste: TracedMovementDto[];

  @OutList(() => TracedMovementDto)
  returns: TracedMovementDto[];

  @OutList(() => TracedMovementDto)
  countDifferences: TracedMovementDto[];

  @OutList(() => TracedShortfallDto, {
    description: 'Visits that scanned this lot when the book had none of it left.',
  })
  shortfalls: TracedShortfallDto[];
}
