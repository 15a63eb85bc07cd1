import { Injectable } from '@nestjs/common';
import { type Actor, Clock, type IsoDate, invalidFields, newId, UnitOfWork } from '#lib/platform';
import { recordAudit } from './record-audit.js';
import { newSecret, secretHash, TOKEN_PREFIX } from './secrets.js';
import { TOKEN_COLUMNS, type TokenView } from './token-view.js';

export interface NewToken {
  readonly id?: string | undefined;
  readonly name: string;
  readonly expiresOn?: IsoDate | null | undefined;
}

/** Makes a personal token: its secret is in the answer, once, and nowhere else. */
@Injectable()
export class CreateToken {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  async run(actor: Actor, command: NewToken): Promise<TokenView & { secret: string }> {
    const expiresOn = command.expiresOn ?? null;
    if (expiresOn !== null && expiresOn < this.clock.today(actor.timeZone)) {
      throw invalidFields([{ field: 'expiresOn', message: 'must not be in the past' }]);
    }
    const secret = `${TOKEN_PREFIX}${newSecret()}`;
    return this.uow.run(actor.practiceId, async (tx) => {
      const [row] = await tx.query<TokenView>(
        `INSERT INTO api_tokens (id, practice_id, person_id, name, token_hash, expires_at)
         VALUES ($1, $2, $3, $4, $5, ($6::date + 1)::timestamp AT TIME ZONE $7)
         RETURNING ${TOKEN_COLUMNS}`,
        [
          command.id ?? newId(),
          actor.practiceId,
          actor.personId,
          command.name.trim(),
          secretHash(secret),
          expiresOn,
          actor.timeZone,
        ],
      );
      if (!row) throw new Error('The token was not stored');
      await recordAudit(tx, actor, {
        action: 'token.created',
        subjectKind: 'token',
        subjectId: row.id,
        details: { name: row.name, expiresOn },
      });
      return { ...row, secret };
    });
  }
}
