import { OutDecimal, OutFlag, OutId, OutList, OutObject, OutText, OutWhole } from '#lib/platform';
import { StockConsumableDto } from '#lib/stock';

export class TemplateUsageRowDto {
  @OutId()
  templateId: string;

  @OutText({ example: 'Posterior filling' })
  templateName: string;

  @OutWhole({ example: 2 })
  version: number;

  @OutFlag({ description: 'Whether visits of today would use this version.' })
  latest: boolean;

  @OutWhole({ description: 'Over so many restorations, the latest ones.' })
  restorations: number;

  @OutObject(() => StockConsumableDto)
  consumable: StockConsumableDto;

  @OutDecimal({ example: '0.12', description: 'Mean per restoration, in stock units.' })
  planned: string;

  @OutDecimal({ example: '0.11', description: 'Mean in the tooth.' })
  placed: string;

  @OutDecimal({ example: '0.14', description: 'Mean out of the container.' })
  dispensed: string;

  @OutDecimal({ example: '0.14', description: 'Mean that left stock.' })
  charged: string;

  @OutDecimal({ example: '0.02', description: 'Dispensed less planned; negative: less was used.' })
  difference: string;

  @OutDecimal({ example: '2.52', description: 'Mean cost.' })
  cost: string;
}

export class TemplateUsageDto {
  @OutWhole({ description: 'The most restorations that were looked at per version.' })
  last: number;

  @OutList(() => TemplateUsageRowDto, {
    description: 'Lines shared by a tooth or a visit are counted in equal parts.',
  })
  rows: TemplateUsageRowDto[];
}

export class WriteOffRowDto {
  @OutText({ example: '2026-05' })
  month: string;

  @OutText({ example: 'expired' })
  reason: string;

  @OutText({ example: 'paste' })
  category: string;

  @OutText({ example: 'g' })
  unit: string;

  @OutDecimal({ example: '3.2' })
  quantity: string;

  @OutDecimal({ example: '57.60' })
  cost: string;
}

export class ChairWasteRowDto {
  @OutText({ example: '2026-05' })
  month: string;

  @OutText({ example: 'paste' })
  category: string;

  @OutText({ example: 'g' })
  unit: string;

  @OutDecimal({ description: 'In teeth.' })
  placed: string;

  @OutDecimal({ description: 'Left stock for it.' })
  charged: string;

  @OutDecimal({ description: 'Charged less placed.' })
  wasted: string;

  @OutDecimal({ description: 'Of what was wasted, in proportion.' })
  cost: string;
}

export class RetakesDto {
  @OutWhole({ description: 'Restorations that were done again at least once.' })
  restorations: number;

  @OutWhole({ description: 'Attempts beyond the first.' })
  extraAttempts: number;

  @OutDecimal()
  cost: string;
}

export class WrongShadeDto {
  @OutDecimal({ description: 'Material of retakes.' })
  retakeCost: string;

  @OutDecimal({ description: 'Containers that were opened in the wrong shade and thrown away.' })
  writeOffCost: string;

  @OutDecimal()
  total: string;
}

export class WasteReportDto {
  @OutText({ example: 'EUR' })
  currency: string;

  @OutList(() => WriteOffRowDto, {
    description: 'Thrown away from stock; undone entries left out.',
  })
  writeOffs: WriteOffRowDto[];

  @OutDecimal()
  writeOffCost: string;

  @OutList(() => ChairWasteRowDto, { description: 'Left stock for a visit but not in a tooth.' })
  chairside: ChairWasteRowDto[];

  @OutDecimal()
  chairsideCost: string;

  @OutObject(() => RetakesDto)
  retakes: RetakesDto;

  @OutObject(() => WrongShadeDto, { description: 'What a wrong shade costs.' })
  wrongShade: WrongShadeDto;
}
