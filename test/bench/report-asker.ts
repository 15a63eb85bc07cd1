import { randomUUID } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { loadavg } from 'node:os';
import type pg from 'pg';
import type { Started } from './start-up.js';

const TICK_MS = 10; // of /proc/*/stat on Linux

/** Asks a running service as its owner. */
export class Asker {
  constructor(
    readonly service: Started,
    private readonly token: string,
  ) {}

  async ask<T>(method: string, url: string, body?: object): Promise<T> {
    const answer = await fetch(`${this.service.url}${url}`, {
      method,
      headers: {
        authorization: `Bearer ${this.token}`,
        'idempotency-key': randomUUID(),
        ...(body ? { 'content-type': 'application/json' } : {}),
      },
      ...(body ? { body: JSON.stringify(body) } : {}),
    });
    const text = await answer.text();
    if (!answer.ok) throw new Error(`${url}: ${text}`);
    return JSON.parse(text) as T;
  }
}

export interface Cpu {
  readonly service: number;
  readonly database: number;
}

/** Milliseconds that the service and its connections have worked so far (Linux; else nothing). */
export async function cpuOf(client: pg.Client, { service }: Asker): Promise<Cpu> {
  const { rows } = await client.query<{ pid: number }>(
    `SELECT pid FROM pg_stat_activity
     WHERE application_name = 'traybook' AND backend_type = 'client backend'`,
  );
  return {
    service: ticksOf(service.child.pid) * TICK_MS,
    database: rows.reduce((sum, { pid }) => sum + ticksOf(pid), 0) * TICK_MS,
  };
}

function ticksOf(pid: number | undefined): number {
  if (process.platform !== 'linux' || pid === undefined) return 0;
  const fields = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ')[1]?.split(' ') ?? [];
  return Number(fields[11] ?? 0) + Number(fields[12] ?? 0);
}

export function load(): string {
  return loadavg()
    .map((n) => n.toFixed(1))
    .join(' ');
}

export function at(times: readonly number[], share: number): number {
  const sorted = [...times].sort((a, b) => a - b);
  return sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? 0;
}

export async function timed(work: () => Promise<unknown>): Promise<number> {
  const start = performance.now();
  await work();
  return performance.now() - start;
}

export function show(what: string, text: string): void {
  console.log(`${what.padEnd(46)} ${text}`);
}
