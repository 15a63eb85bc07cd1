import { answerOf, api, type Shape } from '../../../api/client.js';
import type { Supplier } from './list-suppliers.js';

export function createSupplier(body: Shape<'NewSupplierDto'>): Promise<Supplier> {
  return answerOf(api.POST('/api/suppliers', { body }));
}

export function changeSupplier(id: string, body: Shape<'SupplierChangesDto'>): Promise<Supplier> {
  return answerOf(api.PATCH('/api/suppliers/{id}', { params: { path: { id } }, body }));
}
