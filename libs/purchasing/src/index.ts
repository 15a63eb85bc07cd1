export { ComputeLevels } from './app/compute-levels.js';
export { type ReplayedPractice, ReplayPractices } from './app/foresight/replay-practices.js';
export { RunReplay } from './app/foresight/run-replay.js';
export { ApproveOrder } from './app/orders/approve-order.js';
export { CreateOrder } from './app/orders/create-order.js';
export { FollowOrder } from './app/orders/follow-order.js';
export { SendOrder } from './app/orders/send-order.js';
export { SendNotices } from './app/send-notices.js';
export { SubstituteDesk } from './app/substitute-desk.js';
export { SupplyTermsDesk } from './app/supply-terms-desk.js';
export {
  type Said,
  type StandIn,
  takeInOwnPlanning,
  takeInPresentationTerms,
  takeInSubstitutes,
  takeInSupplyTerms,
} from './app/take-in-planning.js';
export { WatchAlerts } from './app/watch-alerts.js';
export { loadOwnPlanning } from './db/planning-settings.js';
export { loadPresentationTerms } from './db/presentation-terms.js';
export { loadSubstitutes } from './db/substitutes.js';
export { loadSupplyTerms } from './db/supply-terms.js';
export { checkClosures, MOST_CLOSURES } from './domain/planning/closures.js';
export { checkOwnPlanning } from './domain/planning/own-planning.js';
export {
  type Closure,
  type ConsumablePlanning,
  DISCOUNTS,
  NOTHING_OWN,
  PLAIN_PRESENTATION,
  PLAIN_TERMS,
  type PresentationTerms,
  type SupplyTerms,
  WEEKDAYS,
} from './domain/planning/planning-settings.js';
export { checkPriceList, MOST_PRICES } from './domain/planning/price-list.js';
export { PurchasingModule } from './purchasing.module.js';
