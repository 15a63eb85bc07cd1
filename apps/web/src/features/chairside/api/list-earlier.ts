import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type Earlier = Shape<'EarlierRestorationDto'>;

/** What was restored for a chart before, in ISO numbers like all that is entered here. */
export const earlierQuery = (chartReference: string) =>
  queryOptions({
    queryKey: ['visits', 'earlier-restorations', chartReference],
    queryFn: ({ signal }) => {
      const query = { chartReference, toothNotation: 'iso' } as const;
      return answerOf(api.GET('/api/visits/earlier-restorations', { params: { query }, signal }));
    },
    staleTime: 30_000,
    retry: false,
  });
