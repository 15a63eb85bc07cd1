import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export const categoriesQuery = queryOptions({
  queryKey: ['categories'],
  queryFn: ({ signal }): Promise<Shape<'CategoriesDto'>> =>
    answerOf(api.GET('/api/categories', { signal })),
});
