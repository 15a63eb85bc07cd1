import { Algorithm, hash, verify } from '@node-rs/argon2';
import { newSecret } from './secrets.js';

// 19 MiB, 2 passes, 1 lane: the least that OWASP advises for argon2id.
const COST = {
  algorithm: 2 satisfies Algorithm.Argon2id,
  memoryCost: 19_456,
  timeCost: 2,
  parallelism: 1,
};

export function hashPassword(password: string): Promise<string> {
  return hash(password, COST);
}

let nobody: Promise<string> | undefined;

/** Checks a password; for a name that does not exist it does the same work and says no. */
export async function passwordMatches(
  stored: string | undefined,
  password: string,
): Promise<boolean> {
  if (stored !== undefined) return verify(stored, password);
  nobody ??= hashPassword(newSecret());
  await verify(await nobody, password);
  return false;
}
