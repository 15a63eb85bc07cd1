import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type Replay = Shape<'ReplayDto'>;
export type ReplaySummary = Shape<'ReplaySummaryDto'>;
export type ReplayResult = Shape<'ReplayResultDto'>;
export type ReplayedItem = Shape<'ReplayedItemDto'>;
export type ReplaySide = Shape<'ReplaySideDto'>;

/** Looked at again so often while it runs. */
const POLL_MS = 800;

export const replaysQuery = queryOptions({
  queryKey: ['reorder', 'replays'],
  queryFn: ({ signal }): Promise<Shape<'ReplayListDto'>> =>
    answerOf(api.GET('/api/reorder/replays', { signal })),
});

export const replayQuery = (id: string) =>
  queryOptions({
    queryKey: ['reorder', 'replays', id],
    queryFn: ({ signal }): Promise<Replay> =>
      answerOf(api.GET('/api/reorder/replays/{id}', { params: { path: { id } }, signal })),
    refetchInterval: (query) => (query.state.data?.state === 'running' ? POLL_MS : false),
  });

export const startReplay = (body: Shape<'NewReplayDto'>, key: string): Promise<Replay> =>
  answerOf(
    api.POST('/api/reorder/replays', { params: { header: { 'Idempotency-Key': key } }, body }),
  );
