import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

/** The names of all templates, in use or not. */
export const templateNamesQuery = queryOptions({
  queryKey: ['procedure-templates', 'names'],
  queryFn: ({ signal }): Promise<Shape<'TemplatePageDto'>> =>
    answerOf(api.GET('/api/procedure-templates', { params: { query: { limit: 500 } }, signal })),
});
