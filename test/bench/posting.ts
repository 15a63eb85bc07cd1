import { randomUUID } from 'node:crypto';
import { Agent, request } from 'node:http';
import type { BenchBook } from './shelf.js';

export interface Timing {
  readonly perSecond: number;
  readonly p50: number;
  readonly p99: number;
}

function timingOf(milliseconds: number[], seconds: number): Timing {
  const sorted = [...milliseconds].sort((a, b) => a - b);
  const at = (share: number) =>
    sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? 0;
  return { perSecond: milliseconds.length / seconds, p50: at(0.5), p99: at(0.99) };
}

/** Runs jobs over a number of clients that each send one after the other. */
export async function drive(
  clients: number,
  jobs: number,
  job: (client: number, number: number) => Promise<void>,
): Promise<Timing> {
  const times: number[] = [];
  let next = 0;
  const begin = performance.now();
  await Promise.all(
    Array.from({ length: clients }, async (_, client) => {
      while (next < jobs) {
        const number = next;
        next += 1;
        const start = performance.now();
        await job(client, number);
        times.push(performance.now() - start);
      }
    }),
  );
  return timingOf(times, (performance.now() - begin) / 1000);
}

/** Posts visits over HTTP, as the browsers of 16 rooms would. */
export class Poster {
  private readonly agent = new Agent({ keepAlive: true, maxSockets: 64 });

  constructor(
    private readonly url: string,
    private readonly book: BenchBook,
  ) {}

  post(lines: number, visit: number): Promise<void> {
    const body = JSON.stringify(this.book.body(lines, visit));
    return new Promise((resolve, reject) => {
      const sent = request(
        `${this.url}/api/visits`,
        {
          method: 'POST',
          agent: this.agent,
          headers: {
            'content-type': 'application/json',
            'content-length': Buffer.byteLength(body),
            'idempotency-key': randomUUID(),
            authorization: `Bearer ${this.book.token}`,
          },
        },
        (response) => {
          const parts: Buffer[] = [];
          response.on('data', (part: Buffer) => parts.push(part));
          response.on('end', () => {
            if (response.statusCode === 201) resolve();
            else reject(new Error(`${response.statusCode}: ${Buffer.concat(parts).toString()}`));
          });
        },
      );
      sent.on('error', reject);
      sent.end(body);
    });
  }

  close(): void {
    this.agent.destroy();
  }
}
