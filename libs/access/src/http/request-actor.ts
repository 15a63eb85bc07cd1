import type { FastifyRequest } from 'fastify';
import type { Actor } from '#lib/platform';

const actors = new WeakMap<FastifyRequest, Actor>();

export function rememberActor(request: FastifyRequest, actor: Actor): void {
  actors.set(request, actor);
}

export function actorOf(request: FastifyRequest): Actor {
  const actor = actors.get(request);
  if (!actor) throw new Error('A handler without Needs asked for the actor');
  return actor;
}
