import { answerOf, api, type Shape } from '../../../api/client.js';
import type { Person } from './list-people.js';

export function createPerson(body: Shape<'CreatePersonDto'>): Promise<Person> {
  return answerOf(api.POST('/api/people', { body }));
}

export function changePerson(id: string, body: Shape<'ChangePersonDto'>): Promise<Person> {
  return answerOf(api.PATCH('/api/people/{id}', { params: { path: { id } }, body }));
}
