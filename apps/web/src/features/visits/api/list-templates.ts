import { queryOptions } from '@tanstack/react-query';
import { answerOf, api } from '../../../api/client.js';

const query = { active: 'true', limit: 500 } as const;

export const templatesQuery = queryOptions({
  queryKey: ['procedure-templates', query],
  queryFn: ({ signal }) =>
    answerOf(api.GET('/api/procedure-templates', { params: { query }, signal })),
  staleTime: 5 * 60_000,
});
