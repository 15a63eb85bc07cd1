import { Injectable } from '@nestjs/common';
import { type Actor, UnitOfWork } from '#lib/platform';
import { TOKEN_COLUMNS, type TokenView } from './token-view.js';

@Injectable()
export class ListTokens {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor): Promise<TokenView[]> {
    return this.uow.read(actor.practiceId, (tx) =>
      tx.query<TokenView>(
        `SELECT ${TOKEN_COLUMNS} FROM api_tokens WHERE person_id = $1 ORDER BY created_at DESC, id DESC`,
        [actor.personId],
      ),
    );
  }
}
