import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type Balance = Shape<'BalanceDto'>;

interface Search {
  readonly chart?: string | undefined;
  readonly plan?: string | undefined;
  readonly on?: string | undefined;
  readonly cursor?: string | undefined;
}

/** What was entered; 'counting' leaves of each chart and plan only what counts on the day. */
export const balancesQuery = (show: 'all' | 'counting', { chart, plan, on, cursor }: Search) =>
  queryOptions({
    queryKey: ['plan-balances', show, { chart, plan, on, cursor }],
    queryFn: ({ signal }): Promise<Shape<'BalancePageDto'>> => {
      const query = {
        limit: 50,
        show,
        ...(chart === undefined ? {} : { chartReference: chart }),
        ...(plan === undefined ? {} : { planId: plan }),
        ...(on === undefined ? {} : { on }),
        ...(cursor === undefined ? {} : { cursor }),
      };
      return answerOf(api.GET('/api/plan-balances', { params: { query }, signal }));
    },
    placeholderData: (before) => before,
  });

export function recordBalance(body: Shape<'NewBalanceDto'>, key: string): Promise<Balance> {
  const params = { header: { 'Idempotency-Key': key } };
  return answerOf(api.POST('/api/plan-balances', { params, body }));
}
