import { randomUUID } from 'node:crypto';
import { CreatePractice } from '#lib/access';
import { createApp } from '../../apps/api/src/index.js';

/** What the load generator needs to send visits: an address-independent description of the book. */
export interface BenchBook {
  readonly token: string;
  /** Bodies of visits by the number of their usage lines. */
  body(lines: number, visit: number): Record<string, unknown>;
}

export const LINES = 15;
const MOST_LINES = 60;

/** A practice with one opened, nearly endless container of everything a visit may take. */
export async function openBenchBook(databaseUrl: string): Promise<BenchBook> {
  const app = await createApp({ databaseUrl, logLevel: 'error', poolSize: 4 });
  try {
    const owner = await app.get(CreatePractice, { strict: false }).run({
      practice: { name: 'Bench practice', timeZone: 'UTC', currency: 'EUR' },
      owner: { displayName: 'Bench', signInName: 'bench', password: 'a long pass phrase' },
    });
    const cookie = await signIn(app);
    const ask = async (path: string, body: unknown) => {
      const answer = await app.inject({
        method: 'POST',
        url: `/api${path}`,
        headers: { ...cookie, 'idempotency-key': randomUUID() },
        payload: body as object,
      });
      if (answer.statusCode >= 300) throw new Error(`${path}: ${answer.body}`);
      return JSON.parse(answer.body) as Record<string, string>;
    };
    const supplierId = (await ask('/suppliers', { name: 'Bench supplier' })).id;
    const locationId = (await ask('/locations', { name: 'Room', kind: 'room' })).id;
    const items: string[] = [];
    const lines: object[] = [];
    for (let i = 0; i < MOST_LINES; i += 1) {
      const item = { name: `Item ${i}`, category: `category ${i % 8}`, stockUnit: 'g' };
      const consumableId = (await ask('/consumables', item)).id ?? '';
      const pack = { name: 'Pack', dispensing: 'multi-use', containersPerPack: 1 };
      const content = { contentPerContainer: '1000000', consumableId };
      const presentationId = (await ask('/presentations', { ...pack, ...content })).id;
      const lot = { lotNumber: `L-${i}`, expiresOn: '2099-12-31' };
      lines.push({ presentationId, locationId, packs: 1, packPrice: '9999.99', ...lot });
      items.push(consumableId);
    }
    await ask('/deliveries', { supplierId, receivedOn: '2026-01-05', lines });
    const templates = new Map<number, string>();
    for (const count of [1, LINES, MOST_LINES]) {
      const planned = items.slice(0, count).map((consumableId, i) => ({
        consumableId,
        driver: i % 3 === 0 ? 'visit' : 'restoration',
        placed: '0.04',
        dispensed: '0.06',
      }));
      const template = { name: `Template ${count}`, minutes: 40, lines: planned };
      templates.set(count, (await ask('/procedure-templates', template)).id ?? '');
    }
    const token = (await ask('/session/tokens', { name: 'bench' })).secret ?? '';
    const body = (count: number, visit: number) => ({
      chartReference: `B-${visit}`,
      visitedOn: '2026-05-04',
      dentistId: owner.personId,
      locationId,
      restorations: [
        { tooth: '21', surfaces: 'M', reason: 'decay', templateId: templates.get(count) },
      ],
    });
    // The first visit opens the containers.
    await ask('/visits', body(MOST_LINES, 0));
    return { token, body };
  } finally {
    await app.close();
  }
}

async function signIn(app: Awaited<ReturnType<typeof createApp>>): Promise<{ cookie: string }> {
  const answer = await app.inject({
    method: 'POST',
    url: '/api/session',
    payload: { signInName: 'bench', password: 'a long pass phrase' },
  });
  const cookie = String(answer.headers['set-cookie']).split(';')[0] ?? '';
  return { cookie };
}
