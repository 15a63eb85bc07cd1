import type {} from '@fastify/cookie';
import type { FastifyReply, FastifyRequest } from 'fastify';

export const SESSION_COOKIE = 'traybook_session';

/** What the service is told about how it is reached. */
export class AccessOptions {
  /** Mark cookies as Secure even when the request seems to have come without TLS. */
  readonly secureCookies: boolean = false;
}

export function sessionSecretOf(request: FastifyRequest): string | undefined {
  return request.cookies[SESSION_COOKIE];
}

export function bearerSecretOf(request: FastifyRequest): string | undefined {
  const header = request.headers.authorization;
  if (header === undefined) return undefined;
  return /^Bearer +(\S+) *$/i.exec(header)?.[1] ?? '';
}

function attributes(request: FastifyRequest, options: AccessOptions) {
  return {
    path: '/',
    httpOnly: true,
    sameSite: 'lax',
    secure: options.secureCookies || request.protocol === 'https',
  } as const;
}

export function setSessionCookie(
  reply: FastifyReply,
  session: { readonly secret: string; readonly expiresAt: Date },
  options: AccessOptions,
): void {
  void reply.setCookie(SESSION_COOKIE, session.secret, {
    ...attributes(reply.request, options),
    expires: session.expiresAt,
  });
}

export function clearSessionCookie(reply: FastifyReply, options: AccessOptions): void {
  void reply.clearCookie(SESSION_COOKIE, attributes(reply.request, options));
}
