import type { DataSource } from 'typeorm';
import { poolOf } from './authenticate.js';
import { newSecret, secretHash } from './secrets.js';

/** A new secret that lets its holder open an empty book; none when a practice is already in it. */
export async function issueFirstStartLink(dataSource: DataSource): Promise<string | undefined> {
  const pool = poolOf(dataSource);
  const { rows } = await pool.query<{ empty: boolean }>('SELECT book_is_empty() AS empty');
  if (rows[0]?.empty !== true) return undefined;
  const secret = newSecret();
  await pool.query('INSERT INTO first_start_links (token_hash) VALUES ($1)', [secretHash(secret)]);
  return secret;
}
