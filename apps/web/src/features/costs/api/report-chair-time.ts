import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';
import { type Choice, chosen } from '../choice.js';

export type ChairTimeReport = Shape<'ChairTimeDto'>;
export type ChairTimeRow = Shape<'ChairTimeRowDto'>;

/** Chair minutes at the rate of their day, and what nobody used. */
export const chairTimeQuery = (period: Pick<Choice, 'from' | 'to'>, groupBy: string) =>
  queryOptions({
    queryKey: ['reports', 'chair-time', period, groupBy],
    queryFn: ({ signal }): Promise<ChairTimeReport> => {
      const query = { ...chosen(period), groupBy };
      return answerOf(api.GET('/api/reports/chair-time', { params: { query }, signal }));
    },
    placeholderData: (before) => before,
  });
