import { queryOptions } from '@tanstack/react-query';
import { answerOf, api } from '../../../api/client.js';
import { type Choice, chosen } from '../choice.js';
import type { WasteReport } from '../sums.js';

/** What was paid for and helped nobody. */
export const wasteQuery = (period: Pick<Choice, 'from' | 'to'>) =>
  queryOptions({
    queryKey: ['reports', 'waste', period],
    queryFn: ({ signal }): Promise<WasteReport> =>
      answerOf(api.GET('/api/reports/waste', { params: { query: chosen(period) }, signal })),
    placeholderData: (before) => before,
  });
