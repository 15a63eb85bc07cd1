export { basketItem } from './basket-item.js';
export { decideOrder, type OrderDecision } from './decide-order.js';
export type { Demand, LeadTime } from './demand.js';
export { FIGURE_NAMES, type FigureName, type ProposalFigure } from './explain-decision.js';
export type { ItemFacts, OpenOrder } from './item-facts.js';
export { ORDER_BOUNDS } from './limit-packs.js';
export { type PriceTier, packsTotal, type SupplyOffer } from './offer.js';
export { PROPOSAL_FLAGS } from './proposal-flags.js';
export { explainOrder, type OrderProposal, type ShelfOutlook } from './propose-order.js';
export { SERVICE_MEASURES, type ServiceMeasure } from './reorder-point.js';
export {
  type BasketChoice,
  type BasketItem,
  type BasketLine,
  fillBasket,
  freightOf,
  type SupplierBasket,
  type SupplierTerms,
} from './supplier-basket.js';
