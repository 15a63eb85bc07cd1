import { queryOptions } from '@tanstack/react-query';
import { answerOf, api } from '../../../api/client.js';

export interface LastPrice {
  readonly packPrice: string;
  readonly receivedOn: string;
  readonly supplier: string;
}

const LOOK_BACK = 6;

/** What a pack of a presentation cost when it last came; null when it never did (of late). */
export const lastPriceQuery = (consumableId: string, presentationId: string) =>
  queryOptions({
    queryKey: ['layers', 'last-price', presentationId],
    queryFn: async ({ signal }): Promise<LastPrice | null> => {
      const query = { consumableId, account: 'supplier' as const, limit: LOOK_BACK };
      const { items } = await answerOf(api.GET('/api/movements', { params: { query }, signal }));
      const standing = items.filter((one) => one.reversesId === null && one.reversedById === null);
      for (const { layerId } of standing) {
        const path = { id: layerId };
        const layer = await answerOf(api.GET('/api/layers/{id}', { params: { path }, signal }));
        if (layer.presentationId !== presentationId) continue;
        const { paidPerPack, receivedOn, supplier } = layer;
        // What was given away is no price to compare with.
        if (layer.sample) continue;
        return { packPrice: paidPerPack, receivedOn, supplier: supplier.name };
      }
      return null;
    },
    staleTime: 60_000,
  });
