import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type Place = Shape<'LocationDto'>;

/** Every location of the practice, by name; also those no longer in use. */
export const placesQuery = queryOptions({
  queryKey: ['locations', 'all'],
  queryFn: async ({ signal }): Promise<readonly Place[]> => {
    const query = { limit: 500 };
    return (await answerOf(api.GET('/api/locations', { params: { query }, signal }))).items;
  },
  staleTime: 60_000,
});
