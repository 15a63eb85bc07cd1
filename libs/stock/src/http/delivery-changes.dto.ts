import {
  DateField,
  DecimalField,
  IdField,
  ListField,
  OutDecimal,
  OutWhole,
  TextField,
  WholeField,
} from '#lib/platform';
import { DeliveryDto } from './stock-reads.dto.js';

/** The line as it should have been, whole. */
export class CorrectLineDto {
  @IdField()
  presentationId: string;

  @WholeField(1, 100_000, { example: 3 })
  packs: number;

  @DecimalField({ min: '0', max: '1000000', example: '72.00', description: 'Paid per pack.' })
  packPrice: string;

  @IdField()
  locationId: string;

  @TextField(60, { optional: true, description: 'Leave out when the label states none.' })
  lotNumber?: string | null;

  @DateField({ optional: true, description: 'Leave out when the label states none.' })
  expiresOn?: string | null;

  @TextField(300, { example: 'The 8 was a B.' })
  note: string;
}

export class CorrectedDeliveryDto extends DeliveryDto {
  @OutWhole({ description: 'The line under which the goods stand now.' })
  newLine: number;

  @OutDecimal({
    example: '0.6',
    description: 'What had left before, in stock units: it stays as it was recorded.',
  })
  leftBefore: string;
}

export class InvoicedLineDto {
  @WholeField(1, 10_000, { description: 'Of a kit: the line at which it begins.' })
  lineNumber: number;

  @DecimalField({ min: '0', max: '1000000', example: '74.50', description: 'Of a kit: the kit.' })
  packPrice: string;
}

export class InvoiceDto {
  @ListField(() => InvoicedLineDto, { max: 500, description: 'Only lines whose price differs.' })
  lines: InvoicedLineDto[];

  @DecimalField({ optional: true, min: '0', max: '1000000', description: 'As booked if left out.' })
  freight?: string | null;

  @DecimalField({ optional: true, min: '0', max: '1000000', description: 'As booked if left out.' })
  duty?: string | null;

  @DecimalField({ optional: true, min: '0', max: '1000000', description: 'As booked if left out.' })
  discount?: string | null;

  @TextField(80, { optional: true, example: 'INV-2041' })
  reference?: string | null;
}

export class InvoicedDeliveryDto extends DeliveryDto {
  @OutDecimal({ example: '18.00', description: 'What the stock is worth more; negative: less.' })
  toStock: string;

  @OutDecimal({
    example: '12.00',
    description: 'Of the difference, on what had left already: price variance.',
  })
  priceVariance: string;
}
