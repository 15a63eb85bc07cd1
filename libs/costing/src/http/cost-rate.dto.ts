import {
  DateField,
  DecimalField,
  IdField,
  OutDate,
  OutDecimal,
  OutId,
  OutInstant,
  OutList,
  OutObject,
  OutText,
  OutWhole,
  TextField,
  WholeField,
} from '#lib/platform';
import { StockPersonDto } from '#lib/stock';

export class NewCostRateDto {
  @IdField({ optional: true, description: 'Made by the sender; sent again it changes nothing.' })
  id?: string | null;

  @DateField({ description: 'From this day until the next rate begins.' })
  validFrom: string;

  @DecimalField({
    min: '0',
    example: '168000',
    description: 'What a year of the chairs supplied costs, without consumables.',
  })
  yearlyCost: string;

  @WholeField(1, 100_000_000, {
    example: 192_000,
    description: 'Minutes a year that can really be worked at these chairs, all together.',
  })
  practicalMinutes: number;

  @DecimalField({
    optional: true,
    min: '0',
    example: '0.55',
    description: 'What a minute of an assistant costs, where it is not in the yearly cost.',
  })
  assistantRate?: string | null;

  @WholeField(1, 100_000_000, {
    optional: true,
    example: 96_000,
    description:
      'Minutes a year that the assistants together can really work; their idle time is shown when ' +
      'it is known.',
  })
  assistantPracticalMinutes?: number | null;

  @TextField(500, { optional: true, example: 'Rent, equipment, dentist; 2 chairs.' })
  note?: string | null;
}

export class CostRateDto {
  @OutId()
  id: string;

  @OutDate()
  validFrom: string;

  @OutDecimal({ example: '168000.00' })
  yearlyCost: string;

  @OutWhole({ example: 192_000 })
  practicalMinutes: number;

  @OutDecimal({ example: '0.875', description: 'Yearly cost by practical minutes.' })
  ratePerMinute: string;

  @OutDecimal({ nullable: true, example: '0.55' })
  assistantRate: string | null;

  @OutWhole({ nullable: true, example: 96_000 })
  assistantPracticalMinutes: number | null;

  @OutText({ nullable: true })
  note: string | null;

  @OutObject(() => StockPersonDto)
  recordedBy: StockPersonDto;

  @OutInstant()
  recordedAt: string;
}

export class CostRatesDto {
  @OutText({ example: 'EUR' })
  currency: string;

  @OutList(() => CostRateDto, { description: 'The latest first.' })
  items: CostRateDto[];
}
