import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type UsageReport = Shape<'TemplateUsageDto'>;
export type UsageRow = Shape<'TemplateUsageRowDto'>;

/** What was really used beside what the versions of one template plan. */
export const usageQuery = (templateId: string, last: string) =>
  queryOptions({
    queryKey: ['reports', 'template-usage', templateId, last],
    queryFn: ({ signal }): Promise<UsageReport> => {
      const query = { templateId, last: Number(last) };
      return answerOf(api.GET('/api/reports/template-usage', { params: { query }, signal }));
    },
    placeholderData: (before) => before,
  });
