export { type Booked, BookVisits } from './app/book-visits.js';
export { PostVisit } from './app/post-visit.js';
export { ReverseVisit } from './app/reverse-visit.js';
export { type ConsumableFacts, loadFacts, type VisitFacts } from './db/visit-facts.js';
export {
  attributeCost,
  type CostedLine,
  type CostedRestoration,
  type RestorationCost,
  sharesOf,
  type VisitCost,
} from './domain/attribute-cost.js';
export {
  type BookedRestorationInput,
  type BookedVisitInput,
  readBooking,
} from './domain/booked-visit.js';
export { chargeWhole } from './domain/charge-whole.js';
export { PlanVisitDto, PostVisitDto, ScannedDto, UsageEntryDto } from './http/visit-inputs.dto.js';
export { VisitDto, VisitPreviewDto } from './http/visit-outputs.dto.js';
export {
  LATELY,
  loadPlannedBookings,
  type PlannedBooking,
  type PlannedBookings,
} from './queries/booked-plans.js';
export { VisitsModule } from './visits.module.js';
