import { Injectable } from '@nestjs/common';
import type { Pool } from 'pg';
import { DataSource } from 'typeorm';
import type { Actor } from '#lib/platform';
import { secretHash, TOKEN_PREFIX } from './secrets.js';

interface ActorRow {
  person_id: string;
  practice_id: string;
  role: Actor['role'];
  display_name: string;
  sign_in_name: string;
  practice_name: string;
  time_zone: string;
  currency: string;
  tooth_notation: Actor['toothNotation'];
  cost_share_key: Actor['costShareKey'];
  expiry_warning_days: number;
}

/** TypeORM's own pool of pg connections, for the few statements that run before a practice is known. */
export function poolOf(dataSource: DataSource): Pool {
  return (dataSource.driver as unknown as { readonly master: Pool }).master;
}

/** Finds out who sends a request, with the practice's settings, in one round trip. */
@Injectable()
export class Authenticate {
  constructor(private readonly dataSource: DataSource) {}

  /** A personal token begins with tb_, anything else is the secret of a session. */
  async run(secret: string): Promise<Actor | undefined> {
    const kind = secret.startsWith(TOKEN_PREFIX) ? 'token' : 'session';
    const { rows } = await poolOf(this.dataSource).query<ActorRow>({
      name: `access_actor_by_${kind}`,
      text: `SELECT * FROM actor_by_${kind}($1)`,
      values: [secretHash(secret)],
    });
    const [row] = rows;
    return row && toActor(row);
  }
}

function toActor(row: ActorRow): Actor {
  return {
    personId: row.person_id,
    displayName: row.display_name,
    signInName: row.sign_in_name,
    role: row.role,
    practiceId: row.practice_id,
    practiceName: row.practice_name,
    timeZone: row.time_zone,
    currency: row.currency,
    toothNotation: row.tooth_notation,
    costShareKey: row.cost_share_key,
    expiryWarningDays: row.expiry_warning_days,
  };
}
