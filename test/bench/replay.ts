import pg from 'pg';

/** One statement as the service sent it. */
interface Sent {
  readonly name?: string;
  readonly text: string;
  readonly values?: unknown[];
}

type Query = (this: pg.Client, ...args: unknown[]) => unknown;

/**
 * Records what each posting sends to the database, in its order, while `work` runs. A posting's
 * statements go over one connection from BEGIN to COMMIT; asking who sent it comes before.
 */
export async function record(work: () => Promise<void>): Promise<Sent[][]> {
  const postings: Sent[][] = [];
  const open = new Map<pg.Client, Sent[]>();
  const asking: Sent[] = [];
  const prototype = pg.Client.prototype as unknown as { query: Query };
  const original = prototype.query;
  prototype.query = function query(this: pg.Client, ...args: unknown[]) {
    const sent = sentOf(args);
    if (sent) note(this, sent);
    return original.apply(this, args);
  };
  function note(client: pg.Client, sent: Sent): void {
    if (sent.text.startsWith('BEGIN')) open.set(client, [...asking.splice(0, 1), sent]);
    else if (open.has(client)) open.get(client)?.push(sent);
    else asking.push(sent);
    if (!sent.text.endsWith('COMMIT')) return;
    const posting = open.get(client);
    if (posting) postings.push(posting);
    open.delete(client);
  }
  try {
    await work();
  } finally {
    prototype.query = original;
  }
  return postings;
}

function sentOf([first, values]: unknown[]): Sent | undefined {
  if (typeof first === 'string') {
    return Array.isArray(values) ? { text: first, values } : { text: first };
  }
  const config = first as Partial<Sent> | null;
  if (!config || typeof config.text !== 'string') return undefined;
  return {
    text: config.text,
    ...(config.name ? { name: config.name } : {}),
    ...(config.values ? { values: config.values } : {}),
  };
}

/** Sends one recorded posting over a bare connection, statement by statement. */
export async function replay(client: pg.Client, posting: readonly Sent[]): Promise<void> {
  for (const sent of posting) await client.query(sent as pg.QueryConfig);
}

export async function bareClients(url: string, count: number): Promise<pg.Client[]> {
  const clients = Array.from(
    { length: count },
    () => new pg.Client({ connectionString: url, options: '-c role=traybook_app' }),
  );
  await Promise.all(clients.map((client) => client.connect()));
  return clients;
}
