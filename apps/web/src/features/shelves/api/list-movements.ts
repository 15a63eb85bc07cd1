import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';
import { given } from './given.js';

export type Movement = Shape<'MovementDto'>;
export type Account = Movement['from']['account'];

export interface MovementQuery {
  readonly layerId?: string | undefined;
  readonly lotId?: string | undefined;
  readonly consumableId?: string | undefined;
  readonly visitId?: string | undefined;
  readonly account?: Account | undefined;
  readonly from?: string | undefined;
  readonly to?: string | undefined;
  readonly cursor?: string | undefined;
}

/** The ledger, newest entry first. */
export const movementsQuery = (asked: MovementQuery) =>
  queryOptions({
    queryKey: ['movements', asked],
    queryFn: ({ signal }) =>
      answerOf(api.GET('/api/movements', { params: { query: given(asked) }, signal })),
    placeholderData: (before) => before,
  });

export const movementQuery = (id: string) =>
  queryOptions({
    queryKey: ['movements', id],
    queryFn: ({ signal }): Promise<Movement> =>
      answerOf(api.GET('/api/movements/{id}', { params: { path: { id } }, signal })),
  });
