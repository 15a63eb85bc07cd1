import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';
import { activeFlag, type Shown } from '../../../ui/shown.js';

export type PlanSummary = Shape<'PlanSummaryDto'>;
export type Plan = Shape<'PlanDto'>;

interface Search {
  readonly q?: string | undefined;
  readonly show?: Shown | undefined;
  readonly cursor?: string | undefined;
  readonly limit?: number;
}

export const plansQuery = ({ q, show, cursor, limit = 50 }: Search) =>
  queryOptions({
    queryKey: ['fee-plans', 'list', { q, show, cursor, limit }],
    queryFn: ({ signal }): Promise<Shape<'PlanPageDto'>> => {
      const query = {
        limit,
        ...activeFlag(show),
        ...(q === undefined ? {} : { q }),
        ...(cursor === undefined ? {} : { cursor }),
      };
      return answerOf(api.GET('/api/fee-plans', { params: { query }, signal }));
    },
    placeholderData: (before) => before,
  });

export const planQuery = (id: string) =>
  queryOptions({
    queryKey: ['fee-plans', 'one', id],
    queryFn: ({ signal }): Promise<Plan> =>
      answerOf(api.GET('/api/fee-plans/{id}', { params: { path: { id } }, signal })),
  });
