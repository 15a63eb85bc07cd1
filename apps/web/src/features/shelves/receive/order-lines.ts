import { newKey } from '../../../api/idempotency.js';
import type { Order } from '../api/get-order.js';
import type { Presentation } from '../api/list-presentations.js';
import { emptyLine, type Line } from './lines.js';

/** What an order still waits for, as lines to fill in: nothing has come until somebody says so. */
export function orderLines(
  order: Order,
  presentations: readonly Presentation[],
  locationId: string,
): readonly Line[] {
  return order.lines.flatMap((line) => {
    const presentation = presentations.find(({ id }) => id === line.presentation.id);
    if (line.outstanding === 0 || !presentation) return [];
    return [
      {
        ...emptyLine(newKey(), locationId),
        product: { consumable: line.consumable, presentation },
        packPrice: line.packPrice ?? '',
        orderLineId: line.id,
        ordered: line.outstanding,
      },
    ];
  });
}
