import { Body, Controller, Delete, Get, HttpCode, Post, Req, Res } from '@nestjs/common';
import {
  ApiCreatedResponse,
  ApiNoContentResponse,
  ApiOkResponse,
  ApiOperation,
  ApiResponse,
  ApiTags,
} from '@nestjs/swagger';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { type Actor, Clock } from '#lib/platform';
import { refuseAccess } from '../access.refusals.js';
import { SignIn } from '../app/sign-in.js';
import { SignOut } from '../app/sign-out.js';
import { practiceOf } from '../app/views.js';
import { PERMISSIONS_BY_ROLE } from '../domain/permissions.js';
import { AccessOptions, clearSessionCookie, sessionSecretOf, setSessionCookie } from './cookies.js';
import { CurrentActor, Public, SignedIn } from './decorators.js';
import { NewSessionDto, SessionDto, SignInDto } from './session.dto.js';

@ApiTags('session')
@Controller('session')
export class SessionController {
  constructor(
    private readonly signIn: SignIn,
    private readonly signOut: SignOut,
    private readonly clock: Clock,
    private readonly options: AccessOptions,
  ) {}

  @Post()
  @Public()
  @ApiOperation({
    operationId: 'signIn',
    summary: 'Sign in for 12 hours',
    description:
      'The answer sets the cookie traybook_session. Ten failures close the name for a while.',
  })
  @ApiCreatedResponse({ type: NewSessionDto })
  @ApiResponse({ status: 401, description: 'The name or the password is not right.' })
  @ApiResponse({
    status: 429,
    description: 'Too many failures; Retry-After says how long to wait.',
  })
  async open(
    @Body() body: SignInDto,
    @Req() request: FastifyRequest,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<NewSessionDto> {
    const answer = await this.signIn.run({
      signInName: body.signInName,
      password: body.password,
      address: request.ip,
    });
    if ('waitSeconds' in answer) {
      void reply.header('Retry-After', String(answer.waitSeconds));
      const minutes = Math.ceil(answer.waitSeconds / 60);
      throw refuseAccess('too_many_attempts', `Try again in ${minutes} minutes.`);
    }
    setSessionCookie(reply, answer.session, this.options);
    return { ...this.describe(answer.session.actor), expiresAt: answer.session.expiresAt };
  }

  @Get()
  @SignedIn()
  @ApiOperation({ operationId: 'getSession', summary: 'Who is signed in and what they may do' })
  @ApiOkResponse({ type: SessionDto })
  get(@CurrentActor() actor: Actor): SessionDto {
    return this.describe(actor);
  }

  @Delete()
  @Public()
  @HttpCode(204)
  @ApiOperation({
    operationId: 'signOut',
    summary: 'Sign out and end the session',
    description: 'Ends the session of the cookie. Done again, or without one, it changes nothing.',
  })
  @ApiNoContentResponse()
  async close(
    @Req() request: FastifyRequest,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<void> {
    const secret = sessionSecretOf(request);
    if (secret !== undefined) await this.signOut.run(secret);
    clearSessionCookie(reply, this.options);
  }

  private describe(actor: Actor): SessionDto {
    const { personId, displayName, signInName, role } = actor;
    return {
      person: { id: personId, displayName, signInName, role },
      practice: practiceOf(actor),
      permissions: PERMISSIONS_BY_ROLE[role],
      today: this.clock.today(actor.timeZone),
    };
  }
}
