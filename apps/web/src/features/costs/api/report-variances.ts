import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';
import { type Choice, chosen } from '../choice.js';

export type VarianceReport = Shape<'VarianceReportDto'>;
export type VarianceRow = Shape<'VarianceRowDto'>;

/** Actual beside standard cost, and why they differ. */
export const varianceQuery = (choice: Choice, groupBy: string) =>
  queryOptions({
    queryKey: ['reports', 'variances', choice, groupBy],
    queryFn: ({ signal }): Promise<VarianceReport> => {
      const query = { ...chosen(choice), groupBy };
      return answerOf(api.GET('/api/reports/variances', { params: { query }, signal }));
    },
    placeholderData: (before) => before,
  });
