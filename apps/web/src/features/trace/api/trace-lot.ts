import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type LotTrace = Shape<'LotTraceDto'>;
export type TracedMovement = Shape<'TracedMovementDto'>;
export type TracedUse = Shape<'TracedUseDto'>;
export type VisitTrace = Shape<'VisitTraceDto'>;

/** From a lot to everything that became of it. */
export const lotTraceQuery = (id: string, limit: number, cursor: string | undefined) =>
  queryOptions({
    queryKey: ['lots', id, 'trace', limit, cursor ?? 'first'],
    queryFn: ({ signal }): Promise<LotTrace> => {
      const query = cursor === undefined ? { limit } : { limit, cursor };
      return answerOf(api.GET('/api/lots/{id}/trace', { params: { path: { id }, query }, signal }));
    },
    placeholderData: (before) => (before?.lot.id === id ? before : undefined),
  });
