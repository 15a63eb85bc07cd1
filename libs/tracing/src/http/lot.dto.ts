import {
  OutChoice,
  OutDate,
  OutDecimal,
  OutFlag,
  OutId,
  OutInstant,
  OutList,
  OutObject,
  OutText,
} from '#lib/platform';
import { MassBalanceDto, StockConsumableDto, StockPersonDto } from '#lib/stock';
import { DamagedPacksDto, KitOfLotDto, LotCorrectionDto } from './lot-relations.dto.js';
import { TracedDeliveryDto } from './trace.dto.js';

export class LotSummaryDto {
  @OutId()
  id: string;

  @OutText({ nullable: true, description: 'Null when the label states none.' })
  lotNumber: string | null;

  @OutDate({ nullable: true })
  labelExpiry: string | null;

  @OutChoice(['released', 'quarantined', 'recalled'])
  status: string;

  @OutObject(() => StockConsumableDto)
  consumable: StockConsumableDto;

  @OutDecimal({ description: 'In all deliveries that were not undone.' })
  received: string;

  @OutDecimal()
  onHand: string;

  @OutDate({ nullable: true })
  firstReceivedOn: string | null;
}

export class LotPageDto {
  @OutList(() => LotSummaryDto)
  items: LotSummaryDto[];

  @OutList(() => DamagedPacksDto, {
    description: 'Asked by number: packs of it that came damaged and never became stock.',
  })
  damaged: DamagedPacksDto[];

  @OutText({ nullable: true })
  nextCursor: string | null;
}

export class LotStatusChangeDto {
  @OutText()
  status: string;

  @OutText()
  note: string;

  @OutObject(() => StockPersonDto)
  recordedBy: StockPersonDto;

  @OutInstant()
  recordedAt: string;
}

export class TracedLayerDto extends TracedDeliveryDto {
  @OutText()
  presentationName: string;

  @OutFlag({ description: 'The delivery was undone.' })
  reversed: boolean;

  @OutObject(() => MassBalanceDto, {
    description: 'received = on hand + used + wasted + returned + count difference',
  })
  mass: MassBalanceDto;
}

export class LotDto extends LotSummaryDto {
  @OutList(() => TracedLayerDto, { description: 'One per delivery line.' })
  layers: TracedLayerDto[];

  @OutList(() => LotStatusChangeDto, { description: 'The oldest first.' })
  statusChanges: LotStatusChangeDto[];

  @OutList(() => KitOfLotDto, { description: 'Kits in which it came.' })
  kits: KitOfLotDto[];

  @OutList(() => LotCorrectionDto, {
    description: 'Other numbers under which the same goods were or are, because one was wrong.',
  })
  corrections: LotCorrectionDto[];
}
