import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type Suggestion = Shape<'SuggestionDto'>;
export type SuggestedLine = Shape<'SuggestedLineDto'>;

/** What the latest version says, line by line, beside what was used, and a version that says so. */
export const suggestionQuery = (templateId: string, last: string) =>
  queryOptions({
    queryKey: ['reports', 'suggestion', templateId, last],
    queryFn: ({ signal }): Promise<Suggestion> =>
      answerOf(
        api.GET('/api/reports/template-usage/{templateId}/suggestion', {
          params: { path: { templateId }, query: { last: Number(last) } },
          signal,
        }),
      ),
    placeholderData: (before) => before,
  });

/** The service takes what it suggested as it is; its document only names the reasons loosely. */
export function createVersion(
  id: string,
  suggested: Shape<'SuggestedVersionDto'>,
): Promise<Shape<'TemplateDto'>> {
  const body = suggested as Shape<'NewVersionDto'>;
  return answerOf(
    api.POST('/api/procedure-templates/{id}/versions', { params: { path: { id } }, body }),
  );
}
