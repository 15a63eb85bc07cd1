import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

const query = { active: 'true', limit: 500 } as const;
const staleTime = 60_000;

export type Consumable = Shape<'ConsumableDto'>;
export type Fee = Shape<'FeeDto'>;
export type Template = Shape<'TemplateDto'>;

export const templatesQuery = queryOptions({
  queryKey: ['procedure-templates', query],
  queryFn: ({ signal }): Promise<Shape<'TemplatePageDto'>> =>
    answerOf(api.GET('/api/procedure-templates', { params: { query }, signal })),
  staleTime,
});

export const templateQuery = (id: string) =>
  queryOptions({
    queryKey: ['procedure-templates', id],
    queryFn: ({ signal }): Promise<Template> =>
      answerOf(api.GET('/api/procedure-templates/{id}', { params: { path: { id } }, signal })),
    staleTime,
  });

export const consumablesQuery = queryOptions({
  queryKey: ['consumables', query],
  queryFn: ({ signal }): Promise<Shape<'ConsumablePageDto'>> =>
    answerOf(api.GET('/api/consumables', { params: { query }, signal })),
  staleTime,
});

/** The practice's own fees as they count on a day; today's without one. */
export const feesQuery = (on: string | undefined) =>
  queryOptions({
    queryKey: ['fees', query, on],
    queryFn: ({ signal }): Promise<Shape<'FeePageDto'>> => {
      const asked = { ...query, ...(on === undefined ? {} : { on }) };
      return answerOf(api.GET('/api/fees', { params: { query: asked }, signal }));
    },
    staleTime,
  });

export const plansQuery = queryOptions({
  queryKey: ['fee-plans', query],
  queryFn: ({ signal }): Promise<Shape<'PlanPageDto'>> =>
    answerOf(api.GET('/api/fee-plans', { params: { query }, signal })),
  staleTime,
});

/** What was recorded of a chart under a plan, the latest first. */
export const balancesQuery = (planId: string, chartReference: string) =>
  queryOptions({
    queryKey: ['plan-balances', planId, chartReference],
    queryFn: ({ signal }): Promise<Shape<'BalancePageDto'>> => {
      const asked = { planId, chartReference, limit: 20 };
      return answerOf(api.GET('/api/plan-balances', { params: { query: asked }, signal }));
    },
  });
