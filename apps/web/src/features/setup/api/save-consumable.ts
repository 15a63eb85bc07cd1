import { answerOf, api, type Shape } from '../../../api/client.js';
import type { Consumable } from './list-consumables.js';

export function createConsumable(body: Shape<'NewConsumableDto'>): Promise<Consumable> {
  return answerOf(api.POST('/api/consumables', { body }));
}

export function changeConsumable(
  id: string,
  body: Shape<'ConsumableChangesDto'>,
): Promise<Consumable> {
  return answerOf(api.PATCH('/api/consumables/{id}', { params: { path: { id } }, body }));
}
