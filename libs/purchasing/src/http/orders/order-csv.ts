import { toCsv } from '#lib/platform';
import type { OrderDto, OrderLineDto } from './order-answers.dto.js';

const HEADER = [
  ...['order', 'ordered_on', 'customer_number', 'line', 'article_code', 'device_identifier'],
  ...['goods', 'pack', 'packs', 'pack_price', 'amount', 'currency'],
] as const;

/**
 * The lines of an order as a table for the supplier's own machines: RFC 4180 (header, CRLF), UTF-8,
 * plain decimals whatever the language. What a spreadsheet would take for a formula gets an apostrophe.
 */
export function orderCsv(order: OrderDto): Buffer {
  const rows = order.lines.map((line) => cells(order, line));
  return Buffer.from(toCsv(HEADER, rows), 'utf8');
}

function cells(order: OrderDto, line: OrderLineDto): (string | null)[] {
  const { presentation } = line;
  return [
    ...[String(order.number), order.orderedOn, order.supplier.customerNumber],
    ...[String(line.lineNumber), presentation.articleCode, presentation.deviceIdentifier],
    ...[goodsName(line), presentation.name, String(line.packs)],
    ...[line.packPrice, line.total, order.currency],
  ];
}

/** 'Paste, Body 2': how an order names what is in a pack. */
export function goodsName({ consumable }: OrderLineDto): string {
  const { name, shade, size, grit } = consumable;
  return [name, shade, size, grit].filter((part) => part !== null).join(', ');
}
