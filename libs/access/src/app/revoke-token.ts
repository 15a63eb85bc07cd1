import { Injectable } from '@nestjs/common';
import { type Actor, refuse, UnitOfWork } from '#lib/platform';
import { recordAudit } from './record-audit.js';

@Injectable()
export class RevokeToken {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, id: string): Promise<void> {
    await this.uow.run(actor.practiceId, async (tx) => {
      const [row] = await tx.query<{ name: string; alreadyRevoked: boolean }>(
        `SELECT name, revoked_at IS NOT NULL AS "alreadyRevoked" FROM api_tokens
         WHERE id = $1 AND person_id = $2 FOR UPDATE`,
        [id, actor.personId],
      );
      if (!row) {
        throw refuse('not_found', 'You have no token with this id.', [
          { field: 'id', message: 'names no token of yours' },
        ]);
      }
      if (row.alreadyRevoked) return;
      await tx.query('UPDATE api_tokens SET revoked_at = now() WHERE id = $1', [id]);
      await recordAudit(tx, actor, {
        action: 'token.revoked',
        subjectKind: 'token',
        subjectId: id,
        details: { name: row.name },
      });
    });
  }
}
