import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

type Supplier = Shape<'SupplierDto'>;

/** A pack that can be ordered, with what is in it. */
export interface Pack {
  readonly id: string;
  readonly supplierId: string | null;
  readonly name: string;
  readonly goods: string;
}

const PAGE = 500;

interface Page<T> {
  readonly items: readonly T[];
  readonly nextCursor: string | null;
}

async function all<T>(page: (cursor: string | undefined) => Promise<Page<T>>): Promise<T[]> {
  const items: T[] = [];
  let cursor: string | undefined;
  do {
    const { items: more, nextCursor } = await page(cursor);
    items.push(...more);
    cursor = nextCursor ?? undefined;
  } while (cursor !== undefined);
  return items;
}

const asked = (cursor: string | undefined) => ({
  ...{ limit: PAGE, active: 'true' as const },
  ...(cursor === undefined ? {} : { cursor }),
});

/** Suppliers in use, by name. */
export const suppliersQuery = queryOptions({
  queryKey: ['suppliers', 'orders'],
  queryFn: ({ signal }): Promise<Supplier[]> =>
    all((cursor) =>
      answerOf(api.GET('/api/suppliers', { params: { query: asked(cursor) }, signal })),
    ),
});

/** Every pack in use, by what is in it. */
export const packsQuery = queryOptions({
  queryKey: ['presentations', 'orders'],
  queryFn: async ({ signal }): Promise<Pack[]> => {
    const [consumables, packs] = await Promise.all([
      all((cursor) =>
        answerOf(api.GET('/api/consumables', { params: { query: asked(cursor) }, signal })),
      ),
      all((cursor) =>
        answerOf(api.GET('/api/presentations', { params: { query: asked(cursor) }, signal })),
      ),
    ]);
    const names = new Map(consumables.map((each) => [each.id, goodsName(each)]));
    return packs
      .flatMap(({ id, supplierId, name, consumableId }) => {
        const goods = names.get(consumableId);
        return goods === undefined ? [] : [{ id, supplierId, name, goods }];
      })
      .sort((a, b) => a.goods.localeCompare(b.goods) || a.name.localeCompare(b.name));
  },
});

/** 'Paste, Body 2': how a consumable is named. */
export function goodsName(
  of: Readonly<Record<'shade' | 'size' | 'grit', string | null>> & { readonly name: string },
): string {
  return [of.name, of.shade, of.size, of.grit].filter(Boolean).join(', ');
}
