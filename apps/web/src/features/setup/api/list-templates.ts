import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';
import { activeFlag, type Shown } from '../../../ui/shown.js';
import type { TemplateSort } from '../sorts.js';

export type TemplateSummary = Shape<'TemplateSummaryDto'>;

interface Search {
  readonly q?: string | undefined;
  readonly show?: Shown | undefined;
  readonly sort?: TemplateSort | undefined;
  readonly cursor?: string | undefined;
}

export const templatesQuery = ({ q, show, sort, cursor }: Search) =>
  queryOptions({
    queryKey: ['procedure-templates', 'list', { q, show, sort, cursor }],
    queryFn: ({ signal }): Promise<Shape<'TemplatePageDto'>> => {
      const query = {
        limit: 50,
        ...activeFlag(show),
        ...(q === undefined ? {} : { q }),
        ...(sort === undefined ? {} : { sort }),
        ...(cursor === undefined ? {} : { cursor }),
      };
      return answerOf(api.GET('/api/procedure-templates', { params: { query }, signal }));
    },
    placeholderData: (before) => before,
  });
