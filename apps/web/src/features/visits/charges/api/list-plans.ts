import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../../api/client.js';

const query = { active: 'true', limit: 500 } as const;

export const plansQuery = queryOptions({
  queryKey: ['fee-plans', 'list', query],
  queryFn: ({ signal }): Promise<Shape<'PlanPageDto'>> =>
    answerOf(api.GET('/api/fee-plans', { params: { query }, signal })),
});
