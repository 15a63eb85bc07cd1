import { type Money, money, moneyFromMicro, sum } from '#lib/measure';
import { invalidFields, newId, type Tx, unknownReference } from '#lib/platform';
import { moneyText } from '#lib/stock';
import type { NewOrderLine, ProposedLine } from '../../db/orders/orders.js';
import type { ChangedLineDto } from '../../http/orders/orders.dto.js';
import { refusePurchasing } from '../../purchasing.refusals.js';

const PACKS = `
SELECT p.id, p.consumable_id, p.active AND c.active AS active,
       coalesce(paid.pack_price, p.list_price) AS price
FROM presentations p
JOIN consumables c ON c.id = p.consumable_id
LEFT JOIN LATERAL (
  SELECT coalesce(l.kit_pack_price, l.pack_price) AS pack_price
  FROM layers l JOIN deliveries d ON d.id = l.delivery_id
  WHERE l.practice_id = $1 AND l.consumable_id = p.consumable_id AND l.presentation_id = p.id
    AND d.reversed_at IS NULL AND NOT l.undone AND NOT l.sample
  ORDER BY l.received_on DESC, l.id DESC LIMIT 1
) paid ON true
WHERE p.practice_id = $1 AND p.id = ANY ($2::uuid[])`;

interface PackRow {
  readonly id: string;
  readonly consumable_id: string;
  readonly active: boolean;
  readonly price: string | null;
}

/** More than the book holds; nobody orders for so much. */
const MOST = 100_000_000_000n * 1_000_000n;

/**
 * The lines of an order as they are written: each pack once, its price what was paid for it last, or
 * else its list price, unless somebody states one. Refuses with the path of the field.
 */
export async function draftLines(
  tx: Tx,
  lines: readonly ChangedLineDto[],
  proposed: ReadonlyMap<string, ProposedLine> = new Map(),
): Promise<NewOrderLine[]> {
  const ids = lines.map((line) => line.presentationId);
  const rows = await tx.query<PackRow>(PACKS, [tx.practiceId, ids]);
  const packs = new Map(rows.map((row) => [row.id, row]));
  const drafted = lines.map((line, i) => {
    const field = `lines[${i}].presentationId`;
    const pack = packs.get(line.presentationId);
    if (!pack) throw unknownReference(field, 'presentation');
    if (!pack.active) throw misfit(field, 'is no longer in use');
    const first = ids.indexOf(line.presentationId);
    if (first < i) throw misfit(field, `is in line ${first + 1} already: change its packs instead`);
    return {
      id: line.id ?? newId(),
      presentationId: pack.id,
      consumableId: pack.consumable_id,
      packs: line.packs,
      packPrice: line.packPrice ?? (pack.price === null ? null : moneyText(pack.price)),
      proposed: proposed.get(pack.id) ?? null,
    };
  });
  if (goodsOf(drafted) > MOST) {
    throw invalidFields([{ field: 'lines', message: 'come to more than the book can hold' }]);
  }
  return drafted;
}

function misfit(field: string, message: string) {
  return refusePurchasing('order_does_not_fit', 'A line does not fit.', [{ field, message }]);
}

/** What lines with a price come to. */
export function goodsOf(lines: readonly Pick<NewOrderLine, 'packs' | 'packPrice'>[]): Money {
  return sum(
    lines.map(({ packs, packPrice }) =>
      moneyFromMicro(packPrice === null ? 0n : money(packPrice) * BigInt(packs)),
    ),
  );
}

/** A supplier that can be ordered from. */
export async function checkSupplier(tx: Tx, id: string): Promise<void> {
  const [row] = await tx.query<{ active: boolean }>(
    'SELECT active FROM suppliers WHERE practice_id = $1 AND id = $2',
    [tx.practiceId, id],
  );
  if (!row) throw unknownReference('supplierId', 'supplier');
  if (row.active) return;
  throw refusePurchasing('order_does_not_fit', 'Nothing is ordered from this supplier any more.', [
    { field: 'supplierId', message: 'names a supplier that is no longer in use' },
  ]);
}
