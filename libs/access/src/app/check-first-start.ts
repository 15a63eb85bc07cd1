import { Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { poolOf } from './authenticate.js';
import { secretHash } from './secrets.js';

/** The row of a link ($1) that is neither used nor too old. */
export const GOOD_LINK = `token_hash = $1 AND used_at IS NULL AND created_at > now() - interval '7 days'`;

@Injectable()
export class CheckFirstStart {
  constructor(private readonly dataSource: DataSource) {}

  async run(token: string): Promise<boolean> {
    const { rows } = await poolOf(this.dataSource).query<{ good: boolean }>(
      `SELECT book_is_empty() AND EXISTS (SELECT FROM first_start_links WHERE ${GOOD_LINK}) AS good`,
      [secretHash(token)],
    );
    return rows[0]?.good === true;
  }
}
