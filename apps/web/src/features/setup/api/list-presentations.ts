import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type Presentation = Shape<'PresentationDto'>;

/** How one consumable is bought; there are never many. */
export const presentationsQuery = (consumableId: string) =>
  queryOptions({
    queryKey: ['presentations', 'of', consumableId],
    queryFn: ({ signal }): Promise<Shape<'PresentationPageDto'>> =>
      answerOf(
        api.GET('/api/consumables/{id}/presentations', {
          params: { path: { id: consumableId }, query: { limit: 500 } },
          signal,
        }),
      ),
  });
