import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type Arrival = Shape<'MovementDto'>;

/** Where the deliveries of a lot were put: what came from a supplier, undone entries included. */
export const arrivalsQuery = (lotId: string) =>
  queryOptions({
    queryKey: ['movements', { lotId, account: 'supplier' }],
    queryFn: ({ signal }): Promise<Shape<'MovementPageDto'>> => {
      const query = { lotId, account: 'supplier' as const, limit: 500 };
      return answerOf(api.GET('/api/movements', { params: { query }, signal }));
    },
  });
