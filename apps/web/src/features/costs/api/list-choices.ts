import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

/** Who may be asked for as a dentist. */
export const dentistsQuery = queryOptions({
  queryKey: ['dentists'],
  queryFn: ({ signal }): Promise<Shape<'DentistsDto'>> =>
    answerOf(api.GET('/api/dentists', { signal })),
  staleTime: 60_000,
});

/** All templates, also those no longer in use: their restorations are still in the book. */
export const templateChoicesQuery = queryOptions({
  queryKey: ['procedure-templates', 'choices'],
  queryFn: ({ signal }): Promise<Shape<'TemplatePageDto'>> =>
    answerOf(api.GET('/api/procedure-templates', { params: { query: { limit: 500 } }, signal })),
  staleTime: 60_000,
});
