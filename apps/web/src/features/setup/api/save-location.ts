import { answerOf, api, type Shape } from '../../../api/client.js';
import type { Location } from './list-locations.js';

export function createLocation(body: Shape<'NewLocationDto'>): Promise<Location> {
  return answerOf(api.POST('/api/locations', { body }));
}

export function changeLocation(id: string, body: Shape<'LocationChangesDto'>): Promise<Location> {
  return answerOf(api.PATCH('/api/locations/{id}', { params: { path: { id } }, body }));
}
