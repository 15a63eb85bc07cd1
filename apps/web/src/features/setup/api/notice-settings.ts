import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type NoticeSettings = Shape<'NoticeSettingsDto'>;

export const noticeSettingsQuery = queryOptions({
  queryKey: ['notice-settings'],
  queryFn: ({ signal }): Promise<NoticeSettings> =>
    answerOf(api.GET('/api/reorder/notice-settings', { signal })),
});

export function changeNoticeSettings(
  body: Shape<'NoticeSettingsChangesDto'>,
): Promise<NoticeSettings> {
  return answerOf(api.PATCH('/api/reorder/notice-settings', { body }));
}

export function tryNotice(channel: 'digest' | 'webhook'): Promise<Shape<'TrialResultDto'>> {
  return answerOf(api.POST('/api/reorder/notices/trial', { body: { channel } }));
}
