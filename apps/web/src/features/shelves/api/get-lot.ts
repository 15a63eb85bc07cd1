import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type Lot = Shape<'LotDto'>;

/** A lot with its deliveries and its holds. */
export const lotQuery = (id: string) =>
  queryOptions({
    queryKey: ['lots', id],
    queryFn: ({ signal }): Promise<Lot> =>
      answerOf(api.GET('/api/lots/{id}', { params: { path: { id } }, signal })),
  });
