import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type OrderRules = Shape<'OrderRulesAnswerDto'>;

export const orderRulesQuery = queryOptions({
  queryKey: ['order-rules'],
  queryFn: ({ signal }): Promise<OrderRules> => answerOf(api.GET('/api/order-rules', { signal })),
});

export function setOrderRules(body: Shape<'OrderRulesDto'>): Promise<OrderRules> {
  return answerOf(api.PUT('/api/order-rules', { body }));
}
