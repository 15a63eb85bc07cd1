import { Injectable } from '@nestjs/common';
import type { PoolClient } from 'pg';
import { DataSource, type QueryRunner } from 'typeorm';
import { refuse } from '../problems/refused.js';
import { isRetryable } from '../problems/to-refused.js';
import { type Booking, type Claimed, claimSql, readClaim, storeSql } from './booking.js';
import { isId } from './ids.js';
import { Tx } from './tx.js';

const MAX_ATTEMPTS = 5;

/**
 * The one door to a transaction. It sets the practice for row-level security, repeats the work after
 * a serialization failure or deadlock, and carries a booking's idempotency key in the same round trips
 * as BEGIN and COMMIT.
 */
@Injectable()
export class UnitOfWork {
  constructor(private readonly dataSource: DataSource) {}

  /** Runs the work in one transaction; whatever it throws rolls everything back. */
  async run<T>(practiceId: string, work: (tx: Tx) => Promise<T>): Promise<T> {
    return this.repeating(practiceId, `BEGIN; ${setPractice(practiceId)}`, async (tx) => {
      const result = await work(tx);
      await tx.client.query('COMMIT');
      return result;
    });
  }

  /** The same for questions: the database itself refuses a write. */
  async read<T>(practiceId: string, work: (tx: Tx) => Promise<T>): Promise<T> {
    const begin = `BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY; ${setPractice(practiceId)}`;
    return this.repeating(practiceId, begin, async (tx) => {
      const result = await work(tx);
      await tx.client.query('COMMIT');
      return result;
    });
  }

  /**
   * Books something once per Idempotency-Key. A second request with the same key and body gets the
   * first one's answer; with another body it is refused.
   */
  async runOnce<T extends object>(
    booking: Booking,
    work: (tx: Tx) => Promise<T>,
  ): Promise<Claimed<T>> {
    const { practiceId } = booking.actor;
    const begin = `BEGIN; ${setPractice(practiceId)}; ${claimSql(booking)}`;
    return this.repeating(practiceId, begin, async (tx, claimed) => {
      if (!claimed) {
        const earlier = await readClaim<T>(tx, booking);
        await tx.client.query('COMMIT');
        return earlier;
      }
      const body = await work(tx);
      await tx.client.query(`${storeSql(booking, body)}; COMMIT`);
      return { body, repeated: false };
    });
  }

  private async repeating<T>(
    practiceId: string,
    begin: string,
    work: (tx: Tx, claimed: boolean) => Promise<T>,
  ): Promise<T> {
    for (let attempt = 1; ; attempt += 1) {
      try {
        return await this.once(practiceId, begin, work);
      } catch (error) {
        if (!isRetryable(error)) throw error;
        if (attempt === MAX_ATTEMPTS) {
          throw refuse('busy', 'Several people changed the same stock at once. Send it again.');
        }
        await new Promise((resolve) => setTimeout(resolve, 5 * attempt + Math.random() * 20));
      }
    }
  }

  private async once<T>(
    practiceId: string,
    begin: string,
    work: (tx: Tx, claimed: boolean) => Promise<T>,
  ): Promise<T> {
    const runner = this.dataSource.createQueryRunner();
    const client = (await runner.connect()) as PoolClient;
    try {
      const results: unknown = await client.query(begin);
      // TypeORM must not open a transaction of its own inside ours.
      markActive(runner, true);
      const last: unknown = Array.isArray(results) ? results[results.length - 1] : results;
      const claimed = (last as { rowCount: number | null }).rowCount === 1;
      return await work(new Tx(practiceId, client, runner), claimed);
    } catch (error) {
      await client.query('ROLLBACK').catch((failure: unknown) => {
        // The connection itself is gone; the pool drops it and the first error says why.
        if (!(failure instanceof Error)) throw failure;
      });
      throw error;
    } finally {
      markActive(runner, false);
      await runner.release();
    }
  }
}

/** The interface only lets one read the flag; the runner itself keeps it in an ordinary field. */
function markActive(runner: QueryRunner, active: boolean): void {
  (runner as { isTransactionActive: boolean }).isTransactionActive = active;
}

function setPractice(practiceId: string): string {
  if (!isId(practiceId)) throw new Error('A practice id must be a UUID');
  return `SELECT set_config('traybook.practice_id', '${practiceId}', true)`;
}
