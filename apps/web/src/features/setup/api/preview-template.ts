import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type PreviewLine = Shape<'PreviewLineDto'>;
export type Usage = Shape<'DraftPreviewDto'>;

/** What a written version would use for the example. */
export const versionPreviewQuery = (id: string, question: Shape<'PreviewQuestionDto'>) =>
  queryOptions({
    queryKey: ['procedure-templates', 'preview', id, question],
    queryFn: ({ signal }): Promise<Usage> =>
      answerOf(
        api.POST('/api/procedure-templates/{id}/preview', {
          params: { path: { id } },
          body: question,
          signal,
        }),
      ),
    placeholderData: (before) => before,
    retry: false,
  });

/** What the lines on the screen would use for the example, before anybody writes them. */
export const draftPreviewQuery = (question: Shape<'DraftQuestionDto'>) =>
  queryOptions({
    queryKey: ['procedure-templates', 'draft', question],
    queryFn: ({ signal }): Promise<Usage> =>
      answerOf(api.POST('/api/procedure-templates/preview', { body: question, signal })),
    placeholderData: (before) => before,
    retry: false,
  });
