import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';
import { given } from './given.js';

export type DeliverySummary = Shape<'DeliverySummaryDto'>;

export interface DeliveryQuery {
  readonly supplierId?: string | undefined;
  readonly from?: string | undefined;
  readonly to?: string | undefined;
  readonly q?: string | undefined;
  readonly cursor?: string | undefined;
}

/** Deliveries, the latest first. */
export const deliveriesQuery = (asked: DeliveryQuery) =>
  queryOptions({
    queryKey: ['deliveries', 'list', asked],
    queryFn: ({ signal }) =>
      answerOf(api.GET('/api/deliveries', { params: { query: given(asked) }, signal })),
    placeholderData: (before) => before,
  });
