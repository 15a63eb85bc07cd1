import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';
import { Unreachable } from '../../../api/problem.js';
import type { Planned } from '../draft/request.js';

export type Preview = Shape<'VisitPreviewDto'>;
export type UsageLine = Shape<'UsageLineDto'>;

/** What a visit would use and cost, with our keys of the restorations that were asked about. */
export const previewQuery = ({ body, keys }: Planned<Shape<'PlanVisitDto'>>) =>
  queryOptions({
    queryKey: ['visits', 'preview', body, keys],
    queryFn: async ({ signal }) => ({
      preview: await answerOf(api.POST('/api/visits/preview', { body, signal })),
      keys,
    }),
    staleTime: 30_000,
    retry: false,
    // The service is away: look again by and by.
    refetchInterval: ({ state }) => (state.error instanceof Unreachable ? 10_000 : false),
  });
