import type { Distribution } from './demand.js';
import { normal, normalLoss } from './normal.js';

/** What a policy of ordering `orderSize` at `reorderPoint` promises, whoever chose the numbers. */
export interface ImpliedService {
  readonly safetyStock: number;
  /** In standard deviations of use in the lead time; not finite when there is no spread. */
  readonly safetyFactor: number;
  readonly cycleService: number;
  /** Expected to be missing per cycle. */
  readonly expectedShort: number;
  /** 1 - expectedShort / orderSize. */
  readonly fillRate: number;
  readonly averageStock: number;
}

/** Use in the lead time taken as normal; the formulas of the usual textbooks. */
export function impliedService(policy: {
  readonly leadMean: number;
  readonly leadSd: number;
  readonly orderSize: number;
  readonly reorderPoint: number;
}): ImpliedService {
  const { leadMean, leadSd, orderSize, reorderPoint } = policy;
  if (!(orderSize > 0)) throw new RangeError('orderSize: an order is for more than zero.');
  const use = normal(leadMean, leadSd);
  const safetyStock = reorderPoint - leadMean;
  const expectedShort = use.loss(reorderPoint);
  return {
    safetyStock,
    safetyFactor: safetyStock / leadSd,
    cycleService: use.cdf(reorderPoint),
    expectedShort,
    fillRate: 1 - expectedShort / orderSize,
    averageStock: orderSize / 2 + safetyStock,
  };
}

/** Missing per cycle at a safety factor k: sd * G(k). */
export function expectedShortAt(safetyFactor: number, sd: number): number {
  return sd * normalLoss(safetyFactor);
}

/** Long-run figures of a (Q, r) policy. */
export interface LotPolicyFigures {
  readonly fillRate: number;
  /** Owed to users, on average over time. */
  readonly backorders: number;
  /** On the shelf, on average over time. */
  readonly onHand: number;
  readonly ordersPerUse: number;
}

/**
 * Exact for use that comes one count at a time and is owed when missing: the position is then
 * spread evenly over r + 1 ... r + Q (Hadley & Whitin 1963; Hopp & Spearman, Factory Physics,
 * ch. 2). `leadUse` is the use in the lead time; Q and r are whole, Q at least 1.
 */
export function exactLotPolicy(
  leadUse: Distribution,
  orderSize: number,
  reorderPoint: number,
): LotPolicyFigures {
  if (!Number.isInteger(orderSize) || orderSize < 1) {
    throw new RangeError('orderSize: a whole number, at least 1.');
  }
  if (!Number.isInteger(reorderPoint)) throw new RangeError('reorderPoint: a whole number.');
  let owed = 0;
  for (let x = reorderPoint + 1; x <= reorderPoint + orderSize; x += 1) owed += leadUse.loss(x);
  const backorders = owed / orderSize;
  const missed = leadUse.loss(reorderPoint) - leadUse.loss(reorderPoint + orderSize);
  return {
    fillRate: 1 - missed / orderSize,
    backorders,
    onHand: (orderSize + 1) / 2 + reorderPoint - leadUse.mean + backorders,
    ordersPerUse: 1 / orderSize,
  };
}
