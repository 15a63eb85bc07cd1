import { Injectable } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Actor } from '#lib/platform';
import { refuseAccess } from '../access.refusals.js';
import { Authenticate } from '../app/authenticate.js';
import { TOKEN_PREFIX } from '../app/secrets.js';
import { isAllowed, PERMISSION_WORDS, type Permission } from '../domain/permissions.js';
import { comesFromElsewhere } from '../domain/same-site.js';
import { bearerSecretOf, sessionSecretOf } from './cookies.js';
import type { Access } from './decorators.js';
import { knownActor, rememberActor } from './request-actor.js';

/** Whether a request may go on to what needs this access. Asked once per request, it remembers who asks. */
@Injectable()
export class Admission {
  constructor(private readonly authenticate: Authenticate) {}

  /** Throws a refusal: `foreign_origin`, `not_signed_in` or `forbidden`. */
  async admit(request: FastifyRequest, reply: FastifyReply, access: Access): Promise<void> {
    const bearer = bearerSecretOf(request);
    if (bearer === undefined) refuseOtherSites(request);
    if (access === 'public') return;
    const actor = knownActor(request) ?? (await this.actorOf(request, bearer));
    if (!actor) {
      void reply.header('WWW-Authenticate', 'Bearer realm="Traybook"');
      throw refuseAccess('not_signed_in', 'Sign in, or send a personal token that is still valid.');
    }
    if (access !== 'signed in' && !isAllowed(actor.role, access)) throw notAllowed(actor, access);
    rememberActor(request, actor);
  }

  private async actorOf(request: FastifyRequest, bearer?: string): Promise<Actor | undefined> {
    if (bearer !== undefined) {
      return bearer.startsWith(TOKEN_PREFIX) ? this.authenticate.run(bearer) : undefined;
    }
    const secret = sessionSecretOf(request);
    if (secret === undefined || secret.startsWith(TOKEN_PREFIX)) return undefined;
    return this.authenticate.run(secret);
  }
}

function refuseOtherSites(request: FastifyRequest): void {
  const fetchSite = request.headers['sec-fetch-site'];
  const elsewhere = comesFromElsewhere({
    method: request.method,
    origin: request.headers.origin,
    fetchSite: typeof fetchSite === 'string' ? fetchSite : undefined,
    host: request.host,
  });
  if (!elsewhere) return;
  throw refuseAccess('foreign_origin', 'Changes are only taken from the pages of this service.', [
    { field: 'Origin', message: 'is not this service' },
  ]);
}

function notAllowed(actor: Actor, needed: Permission) {
  return refuseAccess(
    'forbidden',
    `This needs somebody who may ${PERMISSION_WORDS[needed]} (${needed}); the role ${actor.role} may not.`,
  );
}
