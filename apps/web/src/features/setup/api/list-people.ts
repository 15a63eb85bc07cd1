import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type Person = Shape<'PersonDto'>;
export type Role = Person['role'];

export const peopleQuery = (cursor?: string, limit = 100) =>
  queryOptions({
    queryKey: ['people', 'list', { cursor, limit }],
    queryFn: ({ signal }): Promise<Shape<'PeopleDto'>> => {
      const query = cursor === undefined ? { limit } : { limit, cursor };
      return answerOf(api.GET('/api/people', { params: { query }, signal }));
    },
    placeholderData: (before) => before,
  });

export const personQuery = (id: string) =>
  queryOptions({
    queryKey: ['people', 'one', id],
    queryFn: ({ signal }): Promise<Person> =>
      answerOf(api.GET('/api/people/{id}', { params: { path: { id } }, signal })),
  });
