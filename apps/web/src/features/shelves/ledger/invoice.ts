import { money } from '#lib/measure';
import { asDecimal } from '../../../ui/decimal-text.js';
import type { Delivery, DeliveryLine } from '../api/get-delivery.js';

/** What is typed, by field: a price for each line, and what was paid for all of them. */
export interface InvoiceValues extends Readonly<Record<string, string>> {
  readonly freight: string;
  readonly duty: string;
  readonly discount: string;
  readonly reference: string;
}

export const priceKey = ({ lineNumber }: Pick<DeliveryLine, 'lineNumber'>) => `price${lineNumber}`;

/** The lines that an invoice has prices for: what was paid, once for a kit and once for corrected goods. */
export function invoicedLines({ lines }: Pick<Delivery, 'lines'>): readonly DeliveryLine[] {
  return lines.filter(
    (line) =>
      !line.undone &&
      !line.sample &&
      line.continuesLine === null &&
      (line.kit === null || line.kit.firstLine === line.lineNumber),
  );
}

/** Only what differs from what is booked. */
export function invoiceBody(values: InvoiceValues, delivery: Delivery) {
  const typed = (name: string) => asDecimal(values[name] ?? '') ?? values[name] ?? '';
  const differs = (name: string, booked: string) => money(typed(name)) !== money(booked);
  const lines = invoicedLines(delivery)
    .filter((line) => differs(priceKey(line), line.kit?.packPrice ?? line.packPrice))
    .map((line) => ({ lineNumber: line.lineNumber, packPrice: typed(priceKey(line)) }));
  const reference = values.reference.trim();
  return {
    lines,
    ...(differs('freight', delivery.freight) ? { freight: typed('freight') } : {}),
    ...(differs('duty', delivery.duty) ? { duty: typed('duty') } : {}),
    ...(differs('discount', delivery.discount) ? { discount: typed('discount') } : {}),
    ...(reference === '' ? {} : { reference }),
  };
}
