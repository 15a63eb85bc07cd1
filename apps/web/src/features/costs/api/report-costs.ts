import { queryOptions } from '@tanstack/react-query';
import { answerOf, api } from '../../../api/client.js';
import { type Choice, chosen } from '../choice.js';
import type { CostReport } from '../groups.js';

/** What the restorations of a choice cost, by some groups. */
export const costReportQuery = (choice: Choice, groupBy: string) =>
  queryOptions({
    queryKey: ['reports', 'restoration-costs', choice, groupBy],
    queryFn: ({ signal }): Promise<CostReport> => {
      const query = { ...chosen(choice), groupBy };
      return answerOf(api.GET('/api/reports/restoration-costs', { params: { query }, signal }));
    },
    placeholderData: (before) => before,
  });
