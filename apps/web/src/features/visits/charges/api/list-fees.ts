import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../../api/client.js';

export type Fee = Shape<'FeeDto'>;

/** The practice's own fees as they counted on the day of the visit. */
export const feesQuery = (on: string) => {
  const query = { active: 'true', limit: 500, on } as const;
  return queryOptions({
    queryKey: ['fees', 'list', query],
    queryFn: ({ signal }): Promise<Shape<'FeePageDto'>> =>
      answerOf(api.GET('/api/fees', { params: { query }, signal })),
  });
};
