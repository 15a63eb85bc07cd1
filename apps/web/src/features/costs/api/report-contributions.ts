import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';
import { type Choice, chosen } from '../choice.js';

export type ContributionReport = Shape<'ContributionReportDto'>;
export type ContributionRow = Shape<'ContributionRowDto'>;

/** What restorations leave after material. */
export const contributionQuery = (choice: Choice, groupBy: string) =>
  queryOptions({
    queryKey: ['reports', 'contributions', choice, groupBy],
    queryFn: ({ signal }): Promise<ContributionReport> => {
      const query = { ...chosen(choice), groupBy };
      return answerOf(api.GET('/api/reports/contributions', { params: { query }, signal }));
    },
    placeholderData: (before) => before,
  });
