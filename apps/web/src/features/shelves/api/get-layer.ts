import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type Layer = Shape<'LayerDto'>;

/** One delivery line as stock, with its balance of quantity and of cost. */
export const layerQuery = (id: string) =>
  queryOptions({
    queryKey: ['layers', id],
    queryFn: ({ signal }): Promise<Layer> =>
      answerOf(api.GET('/api/layers/{id}', { params: { path: { id } }, signal })),
  });
