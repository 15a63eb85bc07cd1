import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type Location = Shape<'LocationDto'>;

/** All places, also those no longer in use: the tree needs the whole of it. */
export const locationsQuery = queryOptions({
  queryKey: ['locations', 'all'],
  queryFn: ({ signal }): Promise<Shape<'LocationPageDto'>> =>
    answerOf(api.GET('/api/locations', { params: { query: { limit: 500 } }, signal })),
});
