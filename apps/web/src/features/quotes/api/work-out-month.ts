import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type MonthQuestion = Shape<'MonthQuestionDto'>;
export type MonthOfWork = Shape<'MonthOfWorkDto'>;

/** What a month of some work leaves; writes nothing. */
export const monthQuery = (body: MonthQuestion) =>
  queryOptions({
    queryKey: ['quotes', 'break-even', body],
    queryFn: ({ signal }): Promise<MonthOfWork> =>
      answerOf(api.POST('/api/quotes/break-even', { body, signal })),
    staleTime: 30_000,
    retry: false,
  });
