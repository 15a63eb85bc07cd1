import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';
import { activeFlag, type Shown } from '../shown.js';

export type TemplateSummary = Shape<'TemplateSummaryDto'>;

interface Search {
  readonly q?: string | undefined;
  readonly show?: Shown | undefined;
  readonly cursor?: string | undefined;
}

export const templatesQuery = ({ q, show, cursor }: Search) =>
  queryOptions({
    queryKey: ['procedure-templates', 'list', { q, show, cursor }],
    queryFn: ({ signal }): Promise<Shape<'TemplatePageDto'>> => {
      const query = {
        limit: 50,
        ...activeFlag(show),
        ...(q === undefined ? {} : { q }),
        ...(cursor === undefined ? {} : { cursor }),
      };
      return answerOf(api.GET('/api/procedure-templates', { params: { query }, signal }));
    },
    placeholderData: (before) => before,
  });
