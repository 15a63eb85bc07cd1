import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

/** From a chart reference to every visit of it, the earliest first. */
export const chartTraceQuery = (reference: string, cursor: string | undefined) =>
  queryOptions({
    queryKey: ['charts', reference, 'trace', cursor ?? 'first'],
    queryFn: ({ signal }): Promise<Shape<'ChartTraceDto'>> => {
      const query = cursor === undefined ? {} : { cursor };
      return answerOf(
        api.GET('/api/charts/{reference}/trace', {
          params: { path: { reference }, query },
          signal,
        }),
      );
    },
    placeholderData: (before) => (before?.chartReference === reference ? before : undefined),
  });

export const visitTraceQuery = (id: string) =>
  queryOptions({
    queryKey: ['visits', id, 'trace'],
    queryFn: ({ signal }): Promise<Shape<'VisitTraceDto'>> =>
      answerOf(api.GET('/api/visits/{id}/trace', { params: { path: { id } }, signal })),
  });
