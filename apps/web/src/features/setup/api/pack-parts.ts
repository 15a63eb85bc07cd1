import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type PackParts = Shape<'PresentationPartsDto'>;
export type PartInput = Shape<'PartInputDto'>;

/** What else is in a pack: the parts of a kit or of a mixed box. */
export const partsQuery = (id: string) =>
  queryOptions({
    queryKey: ['presentations', 'all-parts', id],
    queryFn: ({ signal }): Promise<PackParts> =>
      answerOf(api.GET('/api/presentations/{id}/parts', { params: { path: { id } }, signal })),
  });

export function setParts(id: string, parts: PartInput[]): Promise<PackParts> {
  return answerOf(
    api.PUT('/api/presentations/{id}/parts', { params: { path: { id } }, body: { parts } }),
  );
}
