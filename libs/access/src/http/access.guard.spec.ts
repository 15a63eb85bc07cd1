import { describe, expect, it } from '@jest/globals';
import type { ExecutionContext } from '@nestjs/common';
import { Reflector } from '@nestjs/core';
import type { Actor, Role } from '#lib/platform';
import type { Authenticate } from '../app/authenticate.js';
import { AccessGuard } from './access.guard.js';
import { Admission } from './admission.js';
import { Needs, Public, SignedIn } from './decorators.js';

class Handlers {
  unstated() {}

  @Public()
  open() {}

  @SignedIn()
  own() {}

  @Needs('costs.read')
  costs() {}
}

function ask(handler: keyof Handlers, role?: Role): Promise<boolean> {
  const authenticate = {
    run: () => Promise.resolve(role && ({ role } as Actor)),
  } as unknown as Authenticate;
  const guard = new AccessGuard(new Reflector(), new Admission(authenticate));
  const request = {
    method: 'GET',
    headers: {},
    cookies: { traybook_session: 'secret' },
    host: 'x',
  };
  const context = {
    getHandler: () => Handlers.prototype[handler],
    getClass: () => Handlers,
    switchToHttp: () => ({ getRequest: () => request, getResponse: () => ({ header: () => {} }) }),
  } as unknown as ExecutionContext;
  return guard.canActivate(context);
}

describe('the guard', () => {
  it('closes a handler that does not say who may call it, even to the owner', async () => {
    await expect(ask('unstated', 'owner')).rejects.toMatchObject({ code: 'forbidden' });
  });

  it('lets anybody into a public handler', async () => {
    await expect(ask('open')).resolves.toBe(true);
  });

  it('lets anybody who is signed in into a handler for them', async () => {
    await expect(ask('own', 'auditor')).resolves.toBe(true);
    await expect(ask('own')).rejects.toMatchObject({ code: 'not_signed_in' });
  });

  it('lets those into a handler whose role has the permission', async () => {
    await expect(ask('costs', 'dentist')).resolves.toBe(true);
    await expect(ask('costs', 'assistant')).rejects.toMatchObject({
      code: 'forbidden',
      message: expect.stringContaining('see costs and cost reports'),
    });
    await expect(ask('costs')).rejects.toMatchObject({ code: 'not_signed_in' });
  });
});
