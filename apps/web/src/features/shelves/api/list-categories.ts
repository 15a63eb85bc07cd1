import { queryOptions } from '@tanstack/react-query';
import { answerOf, api } from '../../../api/client.js';

/** The categories in use, by name. */
export const categoriesQuery = queryOptions({
  queryKey: ['categories'],
  queryFn: async ({ signal }): Promise<readonly string[]> => {
    const { items } = await answerOf(api.GET('/api/categories', { signal }));
    return items.map(({ name }) => name);
  },
  staleTime: 60_000,
});
