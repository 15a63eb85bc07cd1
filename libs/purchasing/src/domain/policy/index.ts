export { basketItem } from './basket-item.js';
export { type BulkComparison, compareBulk } from './bulk-offer.js';
export { decideOrder, type OrderDecision, type OrderReason } from './decide-order.js';
export type { Demand, LeadTime, LeadTimeChance } from './demand.js';
export { FIGURE_NAMES, type FigureName, type ProposalFigure } from './explain-decision.js';
export type {
  ItemFacts,
  LevelOverride,
  LotOnHand,
  OpenOrder,
  OrderLimits,
} from './item-facts.js';
export {
  bestMultiples,
  type FamilyItem,
  type FamilyPlan,
  orderAllTogether,
  orderApart,
} from './joint-replenishment.js';
export { ORDER_BOUNDS, type OrderBound } from './limit-packs.js';
export type { PriceTier, SupplyOffer } from './offer.js';
export { PROPOSAL_FLAGS, type ProposalFlag } from './proposal-flags.js';
export {
  type OrderProposal,
  type ProposalOptions,
  proposeOrder,
  type ShelfOutlook,
} from './propose-order.js';
export { SERVICE_MEASURES, type ServiceMeasure, type ServiceTarget } from './reorder-point.js';
export {
  CURVE_LEVELS,
  type CurvePoint,
  type ServiceCurve,
  type ShelfPoint,
  serviceCurve,
  shelfCurve,
} from './service-curve.js';
export { type ProductAttributes, type Substitute, substitutesFor } from './substitutes.js';
export {
  type BasketChoice,
  type BasketItem,
  type BasketLine,
  fillBasket,
  type SupplierBasket,
  type SupplierTerms,
} from './supplier-basket.js';
export { carryingValue, stockTurnover } from './turnover.js';
