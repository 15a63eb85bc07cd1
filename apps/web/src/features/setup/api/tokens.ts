import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, done, type Shape } from '../../../api/client.js';

export type Token = Shape<'TokenDto'>;

export const tokensQuery = queryOptions({
  queryKey: ['tokens'],
  queryFn: ({ signal }): Promise<Shape<'TokensDto'>> =>
    answerOf(api.GET('/api/session/tokens', { signal })),
});

export function createToken(body: Shape<'CreateTokenDto'>): Promise<Shape<'NewTokenDto'>> {
  return answerOf(api.POST('/api/session/tokens', { body }));
}

export function revokeToken(id: string): Promise<void> {
  return done(api.DELETE('/api/session/tokens/{id}', { params: { path: { id } } }));
}
