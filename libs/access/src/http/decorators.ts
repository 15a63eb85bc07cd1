import {
  applyDecorators,
  createParamDecorator,
  type ExecutionContext,
  SetMetadata,
} from '@nestjs/common';
import { ApiExtension, ApiSecurity } from '@nestjs/swagger';
import type { FastifyRequest } from 'fastify';
import type { Actor } from '#lib/platform';
import type { Permission } from '../domain/permissions.js';
import { actorOf } from './request-actor.js';

export const ACCESS = 'traybook:access';

/** Who may call a handler: anybody, anybody signed in, or those with a permission. */
export type Access = 'public' | 'signed in' | Permission;

function secured(access: Access): MethodDecorator & ClassDecorator {
  return applyDecorators(
    SetMetadata(ACCESS, access),
    ApiExtension('x-permission', access),
    ApiSecurity('session'),
    ApiSecurity('token'),
  );
}

/** The handler needs somebody signed in whose role has this permission. */
export const Needs = (permission: Permission) => secured(permission);

/** The handler needs somebody signed in, whatever the role. */
export const SignedIn = () => secured('signed in');

/** The handler is open to anybody who can reach the service. */
export const Public = () =>
  applyDecorators(SetMetadata(ACCESS, 'public'), ApiExtension('x-permission', 'public'));

/** The signed-in person; only in handlers that are not public. */
export const CurrentActor = createParamDecorator(
  (_data: unknown, context: ExecutionContext): Actor =>
    actorOf(context.switchToHttp().getRequest<FastifyRequest>()),
);
