import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type OneOff = Shape<'OneOffDto'>;
export type SubstitutePair = Shape<'SubstitutePairDto'>;

const header = (key: string) => ({ header: { 'Idempotency-Key': key } });

export const oneOffsQuery = queryOptions({
  queryKey: ['reorder', 'one-offs'],
  queryFn: ({ signal }) => answerOf(api.GET('/api/reorder/one-offs', { signal })),
});

export const markOneOff = (body: Shape<'NewOneOffDto'>, key: string): Promise<OneOff> =>
  answerOf(api.POST('/api/reorder/one-offs', { params: header(key), body }));

export const withdrawOneOff = (id: string, key: string): Promise<OneOff> =>
  answerOf(
    api.POST('/api/reorder/one-offs/{id}/withdrawal', {
      params: { path: { id }, ...header(key) },
    }),
  );

export const substitutesQuery = queryOptions({
  queryKey: ['reorder', 'substitutes'],
  queryFn: ({ signal }) => answerOf(api.GET('/api/reorder/substitutes', { signal })),
});

export const addSubstitute = (
  body: Shape<'NewSubstituteDto'>,
  key: string,
): Promise<SubstitutePair> =>
  answerOf(api.POST('/api/reorder/substitutes', { params: header(key), body }));

export const withdrawSubstitute = (id: string, key: string): Promise<SubstitutePair> =>
  answerOf(
    api.POST('/api/reorder/substitutes/{id}/withdrawal', {
      params: { path: { id }, ...header(key) },
    }),
  );
