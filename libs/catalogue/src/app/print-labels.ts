import { Injectable } from '@nestjs/common';
import { type Actor, Clock, refuse, UnitOfWork } from '#lib/platform';
import { type OwnLabel, ownLabels } from '../db/label-own.js';

export interface LabelsWanted {
  readonly locationIds?: readonly string[];
  readonly holdingIds?: readonly string[];
  readonly copies?: number;
}

/** Twenty sheets. */
const MOST_LABELS = 480;

export interface PrintedLabels {
  readonly labels: readonly OwnLabel[];
  readonly printedAt: Date;
}

/** What the labels of places and of stock say. Nothing is written. */
@Injectable()
export class PrintLabels {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  async run(actor: Actor, wanted: LabelsWanted): Promise<PrintedLabels> {
    const { locationIds = [], holdingIds = [], copies = 1 } = wanted;
    if (locationIds.length + holdingIds.length === 0) {
      const detail = 'A sheet needs at least one label: name a place or something in stock.';
      throw refuse('invalid_request', detail, [
        { field: 'locationIds', message: 'must be stated unless holdingIds is' },
      ]);
    }
    if ((locationIds.length + holdingIds.length) * copies > MOST_LABELS) {
      const detail = `At most ${MOST_LABELS} labels are printed at once, which is 20 sheets.`;
      throw refuse('invalid_request', detail, [
        { field: 'copies', message: `makes more than ${MOST_LABELS} labels` },
      ]);
    }
    const [places, holdings] = await this.uow.read(actor.practiceId, async (tx) => [
      await ownLabels(tx, 'location', locationIds),
      await ownLabels(tx, 'container', holdingIds),
    ]);
    refuseUnknown(
      'locationIds',
      locationIds,
      places.map(({ locationId }) => locationId),
    );
    refuseUnknown(
      'holdingIds',
      holdingIds,
      holdings.map(({ holdingId }) => holdingId),
    );
    const labels = [...places, ...holdings].flatMap((label) =>
      Array.from({ length: copies }, () => label),
    );
    return { labels, printedAt: this.clock.now() };
  }
}

function refuseUnknown(
  field: 'locationIds' | 'holdingIds',
  wanted: readonly string[],
  found: readonly (string | null)[],
): void {
  const errors = wanted.flatMap((id, index) =>
    found.includes(id.toLowerCase())
      ? []
      : [{ field: `${field}[${index}]`, message: 'names nothing of this practice' }],
  );
  if (errors.length > 0) {
    throw refuse('invalid_request', 'Some of what is to be labelled does not exist.', errors);
  }
}
