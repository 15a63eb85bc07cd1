import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type Presentation = Shape<'PresentationDto'>;

/** How one consumable is bought now. */
export const presentationsQuery = (consumableId: string) =>
  queryOptions({
    queryKey: ['presentations', { consumableId }],
    queryFn: async ({ signal }): Promise<readonly Presentation[]> => {
      const params = {
        path: { id: consumableId },
        query: { active: 'true' as const, limit: 100 },
      };
      const sent = api.GET('/api/consumables/{id}/presentations', { params, signal });
      return (await answerOf(sent)).items;
    },
    staleTime: 60_000,
  });
