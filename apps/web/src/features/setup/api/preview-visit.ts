import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

/** What a visit would take from the shelves and cost, if it were recorded now. */
export const visitPreviewQuery = (plan: Shape<'PlanVisitDto'>) =>
  queryOptions({
    queryKey: ['visits', 'preview', plan],
    queryFn: ({ signal }): Promise<Shape<'VisitPreviewDto'>> =>
      answerOf(api.POST('/api/visits/preview', { body: plan, signal })),
    placeholderData: (before) => before,
    retry: false,
  });
