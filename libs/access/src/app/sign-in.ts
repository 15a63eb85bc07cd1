import { setTimeout as sleep } from 'node:timers/promises';
import { Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { type Actor, Clock, UnitOfWork } from '#lib/platform';
import { refuseAccess } from '../access.refusals.js';
import { normalSignInName } from '../domain/person-rules.js';
import { SignInThrottle } from '../domain/sign-in-throttle.js';
import { Authenticate, poolOf } from './authenticate.js';
import { passwordMatches } from './passwords.js';
import { recordAudit } from './record-audit.js';
import { newSecret, secretHash } from './secrets.js';

export interface SignInRequest {
  readonly signInName: string;
  readonly password: string;
  readonly address: string;
}

export interface NewSession {
  readonly secret: string;
  readonly actor: Actor;
  readonly expiresAt: Date;
}

interface Credentials {
  person_id: string;
  practice_id: string;
  password_hash: string;
}

export type SignInAnswer = { readonly session: NewSession } | { readonly waitSeconds: number };

/** All refused sign-ins take this long, whether the name exists or not. */
const REFUSAL_MILLIS = 120;

@Injectable()
export class SignIn {
  private readonly throttle = new SignInThrottle();

  constructor(
    private readonly dataSource: DataSource,
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
    private readonly authenticate: Authenticate,
  ) {}

  async run(request: SignInRequest): Promise<SignInAnswer> {
    const name = normalSignInName(request.signInName);
    const key = JSON.stringify([name, request.address]);
    const waitSeconds = this.throttle.begin(key, this.clock.now().getTime());
    if (waitSeconds > 0) return { waitSeconds };
    const refusalDue = sleep(REFUSAL_MILLIS);
    const found = await this.credentialsOf(name);
    if (!found || !(await passwordMatches(found.password_hash, request.password))) {
      if (found) await this.recordFailure(found, request.address);
      else await passwordMatches(undefined, request.password);
      await refusalDue;
      throw refuseAccess('wrong_credentials', 'Check the sign-in name and the password.', [
        { field: 'password', message: 'does not belong to this sign-in name' },
      ]);
    }
    this.throttle.succeeded(key);
    return { session: await this.open(found) };
  }

  private async credentialsOf(name: string): Promise<Credentials | undefined> {
    const { rows } = await poolOf(this.dataSource).query<Credentials>({
      name: 'access_credentials_of',
      text: 'SELECT * FROM credentials_of($1)',
      values: [name],
    });
    return rows[0];
  }

  private async recordFailure(found: Credentials, address: string): Promise<void> {
    await this.uow.run(found.practice_id, (tx) =>
      recordAudit(
        tx,
        { personId: null },
        {
          action: 'session.refused',
          subjectKind: 'person',
          subjectId: found.person_id,
          details: { address },
        },
      ),
    );
  }

  private async open(found: Credentials): Promise<NewSession> {
    const secret = newSecret();
    const expiresAt = await this.uow.run(found.practice_id, async (tx) => {
      // By the database's clock, which is also the one that ends it.
      const [row] = await tx.query<{ expires_at: Date }>(
        `INSERT INTO sessions (token_hash, practice_id, person_id, expires_at)
         VALUES ($1, $2, $3, now() + interval '12 hours') RETURNING expires_at`,
        [secretHash(secret), found.practice_id, found.person_id],
      );
      if (!row) throw new Error('The session was not stored');
      await recordAudit(
        tx,
        { personId: found.person_id },
        { action: 'session.opened', subjectKind: 'person', subjectId: found.person_id },
      );
      return row.expires_at;
    });
    const actor = await this.authenticate.run(secret);
    if (!actor) throw refuseAccess('wrong_credentials', 'This person can no longer sign in.');
    return { secret, actor, expiresAt };
  }
}
