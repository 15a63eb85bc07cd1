import { Injectable, type OnModuleInit } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { BackgroundWork } from '#lib/platform';

const EVERY_SECONDS = 10;
const MOST = 2; // months of a practice in one step

/**
 * Works the months out again in which something changed, so that reports find them ready. Reports are
 * right without it, only slower: they read such months from the restorations themselves.
 */
@Injectable()
export class FoldContributions implements OnModuleInit {
  constructor(
    private readonly dataSource: DataSource,
    private readonly background: BackgroundWork,
  ) {}

  onModuleInit(): void {
    const name = 'Folding of contributions';
    this.background.add(name, EVERY_SECONDS, async () => (await this.run()) > 0);
  }

  /** One step of bounded work, for every practice; answers how many months it folded. */
  async run(): Promise<number> {
    const [row] = await this.dataSource.query<{ folded: number }[]>(
      'SELECT fold_contributions($1) AS folded',
      [MOST],
    );
    return row?.folded ?? 0;
  }
}
