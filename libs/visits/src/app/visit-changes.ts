import { ZERO_MONEY } from '#lib/measure';
import { newId } from '#lib/platform';
import type { IssuePlan, NewMovement, StockChanges, Take } from '#lib/stock';

interface Purpose {
  readonly visitId: string;
  readonly usageLineId: string;
  readonly shortfallId?: string;
}

export interface IssueChanges {
  readonly changes: StockChanges;
  readonly movementOf: ReadonlyMap<Take, string>;
}

/** Turns a choice of stock into movements: containers opened on the way, then what was used. */
export function issueChanges(plan: IssuePlan, purposeOf: (take: Take) => Purpose): IssueChanges {
  const movementOf = new Map<Take, string>();
  const used = plan.takes.map((take): NewMovement => {
    const id = newId();
    movementOf.set(take, id);
    return {
      id,
      layerId: take.layerId,
      from: { account: 'location', holdingId: take.holdingId, locationId: take.locationId },
      to: { account: 'visit' },
      quantity: take.quantity,
      cost: take.cost,
      occurredOn: take.occurredOn,
      sureness: take.sureness,
      outOfOrder: take.outOfOrder,
      ...purposeOf(take),
    };
  });
  const changes: StockChanges = {
    newHoldings: plan.openings.map((opening) => ({
      id: opening.holdingId,
      layerId: opening.layerId,
      locationId: opening.locationId,
      onHand: opening.quantity,
      openedOn: opening.openedOn,
      useBy: opening.useBy,
    })),
    holdings: plan.holdings,
    layers: plan.layers,
    movements: [...openingMovements(plan), ...used],
  };
  return { changes, movementOf };
}

function openingMovements(plan: IssuePlan): NewMovement[] {
  return plan.openings.map((opening) => ({
    id: newId(),
    layerId: opening.layerId,
    from: {
      account: 'location',
      holdingId: opening.fromHoldingId,
      locationId: opening.fromLocationId,
    },
    to: { account: 'location', holdingId: opening.holdingId, locationId: opening.locationId },
    quantity: opening.quantity,
    cost: ZERO_MONEY,
    occurredOn: opening.openedOn,
  }));
}
