import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type Preview = Shape<'VisitPreviewDto'>;
export type UsageLine = Shape<'UsageLineDto'>;

export const previewQuery = (body: Shape<'PlanVisitDto'>) =>
  queryOptions({
    queryKey: ['visits', 'preview', body],
    queryFn: ({ signal }) => answerOf(api.POST('/api/visits/preview', { body, signal })),
    staleTime: 30_000,
    retry: false,
  });
