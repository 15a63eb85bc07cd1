import { type CanActivate, type ExecutionContext, Injectable } from '@nestjs/common';
import { Reflector } from '@nestjs/core';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { refuseAccess } from '../access.refusals.js';
import { Admission } from './admission.js';
import { ACCESS, type Access } from './decorators.js';

/** Stands before every handler. A handler that says nothing about access is closed to everybody. */
@Injectable()
export class AccessGuard implements CanActivate {
  constructor(
    private readonly reflector: Reflector,
    private readonly admission: Admission,
  ) {}

  async canActivate(context: ExecutionContext): Promise<boolean> {
    const targets = [context.getHandler(), context.getClass()];
    const access = this.reflector.getAllAndOverride<Access | undefined>(ACCESS, targets);
    if (access === undefined) {
      throw refuseAccess('forbidden', 'This part of the service is not open to anybody yet.');
    }
    const http = context.switchToHttp();
    const [request, reply] = [http.getRequest<FastifyRequest>(), http.getResponse<FastifyReply>()];
    await this.admission.admit(request, reply, access);
    return true;
  }
}
