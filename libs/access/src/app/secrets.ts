import { createHash, randomBytes } from 'node:crypto';

/** 256 random bits in text that is safe in a cookie, a header and a link. */
export function newSecret(): string {
  return randomBytes(32).toString('base64url');
}

/** What of a secret is stored: whoever reads the database cannot sign in with it. */
export function secretHash(secret: string): Buffer {
  return createHash('sha256').update(secret).digest();
}

export const TOKEN_PREFIX = 'tb_';
