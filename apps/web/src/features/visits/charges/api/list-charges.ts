import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../../api/client.js';

export type Charge = Shape<'ChargeDto'>;

/** All that was recorded for a visit, the latest first, with what was replaced since. */
export const chargesQuery = (visitId: string) =>
  queryOptions({
    queryKey: ['charges', 'visit', visitId],
    queryFn: ({ signal }): Promise<Shape<'ChargePageDto'>> => {
      const query = { visitId, show: 'all', limit: 500 } as const;
      return answerOf(api.GET('/api/charges', { params: { query }, signal }));
    },
  });
