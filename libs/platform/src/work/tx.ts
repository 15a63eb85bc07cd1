import type { PoolClient } from 'pg';
import type { EntityManager, QueryRunner } from 'typeorm';

/** A running transaction of one practice. There is no other way to write. */
export class Tx {
  constructor(
    readonly practiceId: string,
    readonly client: PoolClient,
    private readonly runner: QueryRunner,
  ) {}

  /** TypeORM's manager on this transaction, for master data; hot paths use SQL. */
  get manager(): EntityManager {
    return this.runner.manager;
  }

  async query<Row extends object>(sql: string, parameters: unknown[] = []): Promise<Row[]> {
    return (await this.client.query<Row>(sql, parameters)).rows;
  }

  /** A statement the server parses once per connection; the text must be constant for the name. */
  async named<Row extends object>(name: string, text: string, values: unknown[]): Promise<Row[]> {
    return (await this.client.query<Row>({ name, text, values })).rows;
  }
}
