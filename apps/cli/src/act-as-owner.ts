import pg from 'pg';
import { type Actor, StartupError } from '#lib/platform';

const OWNERS = `
SELECT p.id AS "personId", p.display_name AS "displayName", p.sign_in_name AS "signInName", p.role,
       r.id AS "practiceId", r.name AS "practiceName", r.time_zone AS "timeZone", r.currency,
       r.tooth_notation AS "toothNotation", r.cost_share_key AS "costShareKey",
       r.expiry_warning_days AS "expiryWarningDays"
FROM people p JOIN practices r ON r.id = p.practice_id
WHERE p.role = 'owner' AND p.active AND ($1::text IS NULL OR lower(p.sign_in_name) = lower($1))
ORDER BY p.id`;

/**
 * The owner on whose behalf somebody at this machine works: the one that is named, else the only
 * practice's. Whoever can read the database is trusted with it.
 */
export async function actAsOwner(databaseUrl: string, name: string | undefined): Promise<Actor> {
  const client = new pg.Client({ connectionString: databaseUrl });
  await client.connect();
  try {
    const { rows } = await client.query<Actor>(OWNERS, [name ?? null]);
    const [first] = rows;
    if (!first) {
      throw new StartupError(
        name === undefined
          ? 'The book has no practice yet: start the service and open it first.'
          : `No owner has the sign-in name ${name}.`,
      );
    }
    const practices = new Set(rows.map((row) => row.practiceId));
    if (practices.size === 1) return first;
    const names = rows.map((row) => row.signInName).join(', ');
    throw new StartupError(`There are several practices: say --as with one of ${names}.`);
  } finally {
    await client.end();
  }
}
