import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type ServiceCurve = Shape<'ServiceCurveDto'>;
export type ServicePoint = Shape<'ServicePointDto'>;
export type BulkAnswer = Shape<'BulkAnswerDto'>;

/** Service against stock and waste, for one consumable or the whole shelf. */
export const serviceQuery = (consumableId: string | undefined) =>
  queryOptions({
    queryKey: ['reorder', 'what-if', 'service', consumableId],
    queryFn: ({ signal }): Promise<ServiceCurve> => {
      const query = consumableId === undefined ? {} : { consumableId };
      return answerOf(api.GET('/api/reorder/what-if/service', { params: { query }, signal }));
    },
    placeholderData: (before) => before,
  });

/** It books nothing: it may be asked again and again. */
export const askBulk = (body: Shape<'BulkQuestionDto'>): Promise<BulkAnswer> =>
  answerOf(api.POST('/api/reorder/what-if/bulk', { body }));
