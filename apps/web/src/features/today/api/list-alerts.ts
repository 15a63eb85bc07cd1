import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type Alert = Shape<'AlertDto'>;
export type AlertList = Shape<'AlertListDto'>;

/** Everything that needs somebody today, the most urgent first. */
export const alertsQuery = (withinDays: string | undefined, snoozed: 'true' | undefined) =>
  queryOptions({
    queryKey: ['alerts', withinDays ?? 'practice', snoozed ?? 'open'],
    queryFn: ({ signal }): Promise<AlertList> => {
      const query = {
        ...(withinDays === undefined ? {} : { withinDays: Number(withinDays) }),
        ...(snoozed === undefined ? {} : { snoozed }),
      };
      return answerOf(api.GET('/api/reorder/alerts', { params: { query }, signal }));
    },
    placeholderData: (before) => before,
  });
