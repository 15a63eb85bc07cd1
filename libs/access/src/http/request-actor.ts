import type { FastifyRequest } from 'fastify';
import type { Actor } from '#lib/platform';

const actors = new WeakMap<FastifyRequest, Actor>();

export function rememberActor(request: FastifyRequest, actor: Actor): void {
  actors.set(request, actor);
}

/** Who asks, where that was found out before. */
export function knownActor(request: FastifyRequest): Actor | undefined {
  return actors.get(request);
}

export function actorOf(request: FastifyRequest): Actor {
  const actor = actors.get(request);
  if (!actor) throw new Error('A handler without Needs asked for the actor');
  return actor;
}
