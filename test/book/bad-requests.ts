import type { Answer } from '../http/service.js';
import {
  deliveryLine,
  openSmallBook,
  restoration,
  type SmallBook,
  type TestService,
  type Visit,
  visitBody,
} from './book.js';
import { firstHolding } from './stock-steps.js';

type Owner = Parameters<typeof firstHolding>[0];

/** A practice in which something of everything was booked. */
export interface BusyBook {
  readonly s: SmallBook;
  readonly pasteHolding: string;
  readonly stripHolding: string;
  readonly capsuleHolding: string;
  readonly visit: string;
  readonly delivery: string;
  readonly movement: string;
  readonly lots: Readonly<
    Record<'good' | 'expired' | 'recalled' | 'quarantined' | 'later', string>
  >;
}

export async function openBusyBook(
  service: TestService,
  owner: Owner,
  prefix: string,
): Promise<BusyBook> {
  const s = await openSmallBook(service, prefix);
  const lot = (of: SmallBook['bib'], lotNumber: string, expiresOn: string | null = null) =>
    deliveryLine(of, s.store, 1, '10', { lotNumber, expiresOn });
  const { id: delivery, lines } = await s.book.deliver(s.supplier, '2026-01-05', [
    lot(s.paste, 'P-good', '2028-01-31'),
    lot(s.etchant, 'E-expired', '2026-02-28'),
    lot(s.adhesive, 'A-recalled'),
    lot(s.strip, 'S-quarantined'),
    lot(s.capsule, 'K-good'),
  ]);
  const later = await s.book.deliver(s.supplier, '2026-06-01', [lot(s.bib, 'B-later')]);
  const lots = {
    good: lines[0]?.lot.id ?? '',
    expired: lines[1]?.lot.id ?? '',
    recalled: lines[2]?.lot.id ?? '',
    quarantined: lines[3]?.lot.id ?? '',
    later: later.lines[0]?.lot.id ?? '',
  };
  for (const status of ['recalled', 'quarantined'] as const) {
    await s.book.done('PUT', `/lots/${lots[status]}/status`, { status, note: 'Notice.' });
  }
  const visit = await s.book.done<Visit>('POST', '/visits', visitBody(s));
  const stripHolding = (await firstHolding(owner, s.strip)).id;
  const waste = { holdingId: stripHolding, quantity: '1', reason: 'damaged' };
  const booked = await s.book.done<{ movementIds: string[] }>('POST', '/stock/write-offs', waste);
  return {
    s,
    pasteHolding: (await firstHolding(owner, s.paste)).id,
    stripHolding,
    capsuleHolding: (await firstHolding(owner, s.capsule)).id,
    visit: visit.id,
    delivery,
    movement: booked.movementIds[0] ?? '',
    lots,
  };
}

export type Operation =
  | 'visits'
  | 'visits/preview'
  | 'deliveries'
  | 'stock/moves'
  | 'stock/openings'
  | 'stock/write-offs'
  | 'stock/returns'
  | 'counts'
  | 'visit reversal'
  | 'delivery reversal'
  | 'movement reversal'
  | 'lot status';

export interface Request {
  readonly method: string;
  readonly path: string;
  readonly body: Record<string, unknown>;
}

/** A request of each kind that would be carried out, were nothing changed in it. */
export function goodRequests({ s, ...b }: BusyBook): Readonly<Record<Operation, Request>> {
  const post = (path: string, body: Record<string, unknown>) => ({ method: 'POST', path, body });
  const usage = [{ consumableId: s.paste.id, restoration: 0, attempt: 1, dispensed: '0.1' }];
  const scanned = [{ lotId: b.lots.good }];
  const full = visitBody(s, { restorations: [restoration(s)], usage, scanned });
  const { chartReference: _, dentistId: __, ...plan } = full;
  const holding = { holdingId: b.stripHolding, quantity: '1', occurredOn: '2026-05-04' };
  const note = { note: 'Entered wrongly.' };
  const line = { lotNumber: 'N-1', expiresOn: '2028-01-31' };
  return {
    visits: post('/visits', full),
    'visits/preview': post('/visits/preview', plan),
    deliveries: post('/deliveries', {
      supplierId: s.supplier,
      receivedOn: '2026-05-04',
      lines: [deliveryLine(s.bib, s.store, 1, '10', line)],
    }),
    'stock/moves': post('/stock/moves', { ...holding, toLocationId: s.room }),
    'stock/openings': post('/stock/openings', {
      holdingId: b.pasteHolding,
      openedOn: '2026-05-04',
    }),
    'stock/write-offs': post('/stock/write-offs', { ...holding, reason: 'damaged' }),
    'stock/returns': post('/stock/returns', { ...holding, ...note }),
    counts: post('/counts', {
      countedOn: '2026-05-04',
      lines: [{ holdingId: b.stripHolding, counted: '98' }],
    }),
    'visit reversal': post(`/visits/${b.visit}/reversal`, note),
    'delivery reversal': post(`/deliveries/${b.delivery}/reversal`, note),
    'movement reversal': post(`/movements/${b.movement}/reversal`, note),
    'lot status': {
      method: 'PUT',
      path: `/lots/${b.lots.good}/status`,
      body: { status: 'quarantined', ...note },
    },
  };
}

/** A copy of a body in which the field at a path, e.g. `lines[0].counted`, is another. */
export function withField(body: unknown, path: string, value: unknown): unknown {
  const [step = '', ...rest] = path.split(/[.[]/).map((part) => part.replace(']', ''));
  const inner = (old: unknown) =>
    rest.length === 0 ? value : withField(old ?? {}, rest.join('.'), value);
  if (Array.isArray(body)) {
    const copy: unknown[] = [...body];
    copy[Number(step)] = inner(copy[Number(step)]);
    return copy;
  }
  const known = body as Record<string, unknown>;
  const list = /^\d+$/.test(rest[0] ?? '') && known[step] === undefined ? [] : known[step];
  return { ...known, [step]: inner(list) };
}

export function send(b: BusyBook, request: Request, body: unknown): Promise<Answer> {
  const text = typeof body === 'string' ? body : JSON.stringify(body);
  return b.s.book.ask(request.method, request.path, text);
}

/** A sum over every row of a practice in every table, those of Idempotency-Keys included. */
export async function sumOfBook(owner: Owner, b: BusyBook): Promise<Record<string, string>> {
  const { rows: tables } = await owner.query<{ name: string }>(
    `SELECT c.table_name AS name FROM information_schema.columns c
     JOIN information_schema.tables t USING (table_schema, table_name)
     WHERE t.table_schema = 'public' AND t.table_type = 'BASE TABLE'
       AND c.column_name = 'practice_id' ORDER BY 1`,
  );
  const parts = tables.map(
    ({ name }) => `SELECT '${name}' AS name, count(*) || ' ' ||
      coalesce(md5(string_agg(t::text, '|' ORDER BY t::text)), '') AS sum
      FROM "${name}" t WHERE practice_id = $1`,
  );
  const { practiceId } = b.s.book.practice.owner;
  const { rows } = await owner.query<{ name: string; sum: string }>(parts.join(' UNION ALL '), [
    practiceId,
  ]);
  return Object.fromEntries(rows.map((row) => [row.name, row.sum]));
}
