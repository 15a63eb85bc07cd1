import { expect } from '@jest/globals';
import type pg from 'pg';
import type { Role } from '../../libs/platform/src/index.js';
import type { Answer } from '../http/service.js';
import type { TestBook } from './book.js';

export interface Checked {
  readonly ready: boolean;
  readonly sheetsLeftOut: string[];
  readonly sheets: {
    readonly kind: string;
    readonly sheet: string;
    readonly problems: string[];
    readonly columns: { column: string; heading: string; as: string | null; leftOut: boolean }[];
    readonly missing: string[];
    readonly newRows: number;
    readonly changedRows: number;
    readonly sameRows: number;
    readonly errorRows: number;
    readonly rows: {
      readonly row: number;
      readonly fate: string;
      readonly title: string;
      readonly changes: { column: string; from: string | null; to: string | null }[];
      readonly problems: { column: string | null; message: string; sentence: string }[];
    }[];
  }[];
}

/** Sends a file to one of the two routes that take files. */
export async function sendFile(
  book: TestBook,
  path: string,
  file: string | Buffer,
  sent: { readonly role?: Role; readonly headers?: Record<string, string> } = {},
): Promise<Answer> {
  const { cookie } = book.practice.people[sent.role ?? 'manager'];
  const response = await book.service.app.inject({
    method: 'POST',
    url: `/api${path}`,
    headers: {
      'content-type': 'application/octet-stream',
      'idempotency-key': crypto.randomUUID(),
      cookie: `traybook_session=${cookie}`,
      ...sent.headers,
    },
    payload: file,
  });
  return {
    status: response.statusCode,
    headers: response.headers,
    text: response.body,
    body: JSON.parse(response.body) as Record<string, unknown>,
  };
}

export async function check(
  book: TestBook,
  kind: string,
  file: string | Buffer,
  query = '',
): Promise<Checked> {
  const answer = await sendFile(book, `/imports/check?kind=${kind}${query}`, file);
  if (answer.status !== 200) throw new Error(`${answer.status} ${answer.text}`);
  return answer.body as unknown as Checked;
}

/** Brings a file in and insists on success. */
export async function bring(
  book: TestBook,
  kind: string,
  file: string | Buffer,
  query = '',
): Promise<Record<string, unknown>> {
  const answer = await sendFile(book, `/imports?kind=${kind}${query}`, file);
  if (answer.status !== 201) throw new Error(`${answer.status} ${answer.text}`);
  return answer.body;
}

/** A file of the service's, as its bytes. */
export async function fetchFile(book: TestBook, path: string): Promise<Buffer> {
  const response = await book.service.app.inject({
    method: 'GET',
    url: `/api${path}`,
    headers: { cookie: `traybook_session=${book.practice.people.manager.cookie}` },
  });
  if (response.statusCode !== 200) throw new Error(`${response.statusCode} ${response.body}`);
  return response.rawPayload;
}

/** Every sentence of a check, of sheets and rows. */
export function sentences(checked: Checked): string[] {
  return checked.sheets.flatMap((sheet) => [
    ...sheet.problems,
    ...sheet.rows.flatMap((row) => row.problems.map((each) => each.sentence)),
  ]);
}

/** Everything an import could touch; the log of imports itself is not part of the book. */
async function fingerprint(owner: Pick<pg.Client, 'query'>): Promise<string> {
  const tables = [
    ...['suppliers', 'locations', 'consumables', 'presentations', 'lots', 'deliveries', 'layers'],
    ...['holdings', 'movements', 'imported_rows', 'booked_visits', 'audit_entries'],
    ...['supplier_terms', 'supplier_closures', 'presentation_terms', 'price_breaks'],
    ...['presentation_parts', 'consumable_planning', 'substitutes'],
  ];
  const parts: string[] = [];
  for (const table of tables) {
    const { rows } = await owner.query<{ hash: string }>(
      `SELECT count(*) || ' ' || coalesce(md5(string_agg(t::text, '|' ORDER BY t::text)), '') AS hash
       FROM ${table} t`,
    );
    parts.push(`${table} ${rows[0]?.hash}`);
  }
  return parts.join('\n');
}

/** Checks and sends the file: both refuse it with the sentence, and nothing of it is in the book. */
export async function refusesFile(
  { book, owner }: { readonly book: TestBook; readonly owner: Pick<pg.Client, 'query'> },
  { kind, file }: { readonly kind: string; readonly file: string | Buffer },
  sentence: RegExp | string,
): Promise<void> {
  const before = await fingerprint(owner);
  const checked = await sendFile(book, `/imports/check?kind=${kind}`, file);
  const said =
    checked.status === 200
      ? sentences(checked.body as never)
      : [String(checked.body.detail), JSON.stringify(checked.body)];
  expect(said.join('\n')).toMatch(sentence);
  const sent = await sendFile(book, `/imports?kind=${kind}`, file);
  expect(sent.status).toBe(422);
  expect(JSON.stringify(sent.body.errors ?? sent.body).replaceAll('\\"', '"')).toMatch(sentence);
  expect(await fingerprint(owner)).toBe(before);
}
