import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

/** The latest restoration that was recorded by a template: the best example for it. */
export const lastRestorationQuery = (templateId: string) =>
  queryOptions({
    queryKey: ['restorations', 'last', templateId],
    queryFn: async ({ signal }): Promise<Shape<'RestorationSummaryDto'> | null> => {
      const query = { templateId, limit: 1, sort: 'date' as const };
      const page = await answerOf(api.GET('/api/restorations', { params: { query }, signal }));
      return page.items[0] ?? null;
    },
    staleTime: Number.POSITIVE_INFINITY,
  });
