import { answerOf, api, type Shape } from '../../../api/client.js';
import type { Plan } from './plans.js';

const header = (key: string) => ({ 'Idempotency-Key': key });

export function createPlan(body: Shape<'NewPlanDto'>, key: string): Promise<Plan> {
  return answerOf(api.POST('/api/fee-plans', { params: { header: header(key) }, body }));
}

export function changePlan(id: string, body: Shape<'PlanChangesDto'>): Promise<Plan> {
  return answerOf(api.PATCH('/api/fee-plans/{id}', { params: { path: { id } }, body }));
}

export function addPlanTerms(
  id: string,
  body: Shape<'NewPlanTermDto'>,
  key: string,
): Promise<Plan> {
  const params = { path: { id }, header: header(key) };
  return answerOf(api.POST('/api/fee-plans/{id}/terms', { params, body }));
}
