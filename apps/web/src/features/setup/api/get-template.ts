import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type Template = Shape<'TemplateDto'>;
export type TemplateLine = Template['lines'][number];
export type Driver = TemplateLine['driver'];

/** One version of a template, the latest when none is named. */
export const templateQuery = (id: string, version?: number) =>
  queryOptions({
    queryKey: ['procedure-templates', 'one', id, version ?? 'latest'],
    queryFn: ({ signal }): Promise<Template> =>
      answerOf(
        api.GET('/api/procedure-templates/{id}', {
          params: { path: { id }, query: version === undefined ? {} : { version } },
          signal,
        }),
      ),
  });

export const versionsQuery = (id: string) =>
  queryOptions({
    queryKey: ['procedure-templates', 'versions', id],
    queryFn: ({ signal }): Promise<Shape<'VersionsDto'>> =>
      answerOf(
        api.GET('/api/procedure-templates/{id}/versions', { params: { path: { id } }, signal }),
      ),
  });
