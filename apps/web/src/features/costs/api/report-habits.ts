import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';
import { type Choice, chosen } from '../choice.js';

export type HabitReport = Shape<'HabitsDto'>;
export type Habit = Shape<'HabitDto'>;

/** What costs most without any use. */
export const habitsQuery = (period: Pick<Choice, 'from' | 'to'>) =>
  queryOptions({
    queryKey: ['reports', 'habits', period],
    queryFn: ({ signal }): Promise<HabitReport> =>
      answerOf(api.GET('/api/reports/habits', { params: { query: chosen(period) }, signal })),
    placeholderData: (before) => before,
  });
