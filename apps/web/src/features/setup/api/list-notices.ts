import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type Notice = Shape<'NoticeDto'>;

export const noticesQuery = (cursor: string | undefined) =>
  queryOptions({
    queryKey: ['notices', cursor ?? ''],
    queryFn: ({ signal }): Promise<Shape<'NoticePageDto'>> => {
      const query = { limit: 20, ...(cursor === undefined ? {} : { cursor }) };
      return answerOf(api.GET('/api/reorder/notices', { params: { query }, signal }));
    },
    placeholderData: (before) => before,
  });
