import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type Explained = Shape<'RestorationExplainedDto'>;
export type CostedLine = Shape<'CostedLineDto'>;
export type CostSource = Shape<'CostSourceDto'>;

/** Where the cost of one restoration comes from. */
export const explainedQuery = (id: string) =>
  queryOptions({
    queryKey: ['restorations', id, 'cost'],
    queryFn: ({ signal }): Promise<Explained> =>
      answerOf(api.GET('/api/restorations/{id}/cost', { params: { path: { id } }, signal })),
  });
