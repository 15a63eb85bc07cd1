import { Injectable } from '@nestjs/common';
import type { Actor } from '#lib/platform';
import { refuseAccess } from '../access.refusals.js';
import { CheckFirstStart, GOOD_LINK } from './check-first-start.js';
import { CreatePractice, type NewPractice } from './create-practice.js';
import { secretHash } from './secrets.js';

/** Two people with two links must not both find the book empty. */
const ONE_AT_A_TIME = 7_290_411;

@Injectable()
export class FirstStart {
  constructor(
    private readonly createPractice: CreatePractice,
    private readonly checkFirstStart: CheckFirstStart,
  ) {}

  async run(token: string, command: NewPractice): Promise<Actor> {
    // A stranger must not make the service hash passwords.
    if (!(await this.checkFirstStart.run(token))) throw closed();
    return this.createPractice.run(command, async (tx) => {
      await tx.query('SELECT pg_advisory_xact_lock($1)', [ONE_AT_A_TIME]);
      const used = await tx.query(
        `UPDATE first_start_links SET used_at = now() WHERE ${GOOD_LINK} AND book_is_empty()
         RETURNING used_at`,
        [secretHash(token)],
      );
      if (used.length !== 1) throw closed();
    });
  }
}

function closed() {
  return refuseAccess(
    'first_start_closed',
    'The link was used, is too old, or the book already has a practice. Start the service anew for another.',
    [{ field: 'token', message: 'is not a link that can be used' }],
  );
}
