import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type Rate = Shape<'CostRateDto'>;

export const ratesQuery = queryOptions({
  queryKey: ['cost-rates'],
  queryFn: ({ signal }): Promise<Shape<'CostRatesDto'>> =>
    answerOf(api.GET('/api/cost-rates', { signal })),
});

export function createRate(body: Shape<'NewCostRateDto'>): Promise<Rate> {
  return answerOf(api.POST('/api/cost-rates', { body }));
}
