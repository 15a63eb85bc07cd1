import { Injectable } from '@nestjs/common';
import { type Actor, UnitOfWork } from '#lib/platform';

export interface CategoryView {
  readonly name: string;
  /** Active consumables in it. */
  readonly consumables: number;
}

/** Categories are whatever the practice typed; this is what it typed so far. */
@Injectable()
export class ListCategories {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor): Promise<{ items: CategoryView[] }> {
    const items = await this.uow.read(actor.practiceId, (tx) =>
      tx.query<CategoryView>(
        `SELECT category AS name, count(*) FILTER (WHERE active)::int AS consumables
         FROM consumables GROUP BY category ORDER BY lower(category), category`,
      ),
    );
    return { items };
  }
}
