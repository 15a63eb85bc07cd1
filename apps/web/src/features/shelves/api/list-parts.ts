import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type KitPart = Shape<'PartDto'>;

/** What else is in a pack; nothing for most. */
export const partsQuery = (presentationId: string) =>
  queryOptions({
    queryKey: ['presentations', 'parts', presentationId],
    queryFn: async ({ signal }): Promise<readonly KitPart[]> => {
      const params = { path: { id: presentationId } };
      return (await answerOf(api.GET('/api/presentations/{id}/parts', { params, signal }))).parts;
    },
    staleTime: 60_000,
  });
