import { Injectable, type OnModuleInit } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { BackgroundWork } from '#lib/platform';

const EVERY_SECONDS = 10;
const MOST = 2000; // changes in one step

/**
 * Moves what changed into the packed months, so that there is never much of it. Reports are right
 * without it; with more to add up they take longer. Postings neither wait for it nor it for them.
 */
@Injectable()
export class FoldCosts implements OnModuleInit {
  constructor(
    private readonly dataSource: DataSource,
    private readonly background: BackgroundWork,
  ) {}

  onModuleInit(): void {
    this.background.add('Folding of costs', EVERY_SECONDS, async () => (await this.run()) > 0);
  }

  /** One step of bounded work, for every practice; answers how many changes it folded. */
  async run(): Promise<number> {
    const [row] = await this.dataSource.query<{ folded: number }[]>(
      'SELECT fold_cost_changes($1) AS folded',
      [MOST],
    );
    return row?.folded ?? 0;
  }
}
