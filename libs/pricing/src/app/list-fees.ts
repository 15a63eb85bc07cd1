import { Injectable } from '@nestjs/common';
import { type ListQuery, pageByName } from '#lib/catalogue';
import { type Actor, Clock, type IsoDate, type Page, UnitOfWork } from '#lib/platform';
import { FeeEntity } from '../db/fee.entity.js';
import { versionsOn } from '../db/fee-versions.js';
import { type FeeView, feeSummary, versionView } from './fee-view.js';

@Injectable()
export class ListFees {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  async run(
    actor: Actor,
    query: ListQuery,
    on: IsoDate = this.clock.today(actor.timeZone),
  ): Promise<Page<FeeView>> {
    return this.uow.read(actor.practiceId, async (tx) => {
      const page = await pageByName(tx, {
        entity: FeeEntity,
        query,
        searched: ['code'],
        toView: feeSummary,
      });
      const versions = await versionsOn(
        tx,
        page.items.map((fee) => fee.id),
        on,
      );
      const items = page.items.map((fee) => {
        const version = versions.get(fee.id);
        return { ...fee, current: version ? versionView(version) : null };
      });
      return { items, nextCursor: page.nextCursor };
    });
  }
}
