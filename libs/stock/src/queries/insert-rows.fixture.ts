import type pg from 'pg';

/** Writes rows as the owner, behind the service's back; all with the columns of the first. */
export async function insertRows(
  client: pg.Client,
  table: string,
  rows: readonly object[],
): Promise<void> {
  const columns = Object.keys(rows[0] ?? {}).join(', ');
  await client.query(
    `INSERT INTO ${table} (${columns}) SELECT ${columns}
     FROM jsonb_populate_recordset(null::${table}, $1)`,
    [JSON.stringify(rows)],
  );
}
