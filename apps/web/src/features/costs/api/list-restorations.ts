import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';
import { type Choice, chosen } from '../choice.js';

export type Restoration = Shape<'RestorationSummaryDto'>;

interface Search extends Choice {
  readonly visitId?: string | undefined;
  readonly sort?: 'date' | 'cost' | undefined;
  readonly cursor?: string | undefined;
}

/** Restorations and what each cost; the service sorts and pages. */
export const restorationsQuery = (search: Search) =>
  queryOptions({
    queryKey: ['restorations', search],
    queryFn: ({ signal }): Promise<Shape<'RestorationPageDto'>> =>
      answerOf(api.GET('/api/restorations', { params: { query: chosen(search) }, signal })),
    placeholderData: (before) => before,
  });
