import { answerOf, api, type Session, type Shape } from '../../../api/client.js';

export function signIn(body: Shape<'SignInDto'>): Promise<Session> {
  return answerOf(api.POST('/api/session', { body }));
}
