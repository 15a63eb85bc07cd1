export {
  CreateConsumable,
  type NewConsumable,
} from './app/create-consumable.js';
export { CreateLocation, type NewLocation } from './app/create-location.js';
export { CreatePresentation, type NewPresentation } from './app/create-presentation.js';
export { CreateSupplier, type NewSupplier } from './app/create-supplier.js';
export { findNamed, findToChange } from './app/find.js';
export { PresentationParts, setPresentationParts } from './app/presentation-parts.js';
export type {
  ConsumableView,
  LocationView,
  PresentationView,
  SupplierView,
} from './app/views.js';
export { CatalogueModule } from './catalogue.module.js';
export { type ConsumableFacts, loadConsumables } from './db/load-consumables.js';
export { type ListQuery, pageByName, type SortColumn } from './db/page-by-name.js';
export { loadPresentationParts } from './db/presentation-parts.js';
export { type MasterRow, saveMany } from './db/save-many.js';
export { refusingTaken, type TakenNames } from './db/taken.js';
export { changesBetween } from './domain/changes.js';
export {
  type ExpiryFacts,
  effectiveExpiry,
  type LifeAfterOpening,
} from './domain/effective-expiry.js';
export { MAX_LEVELS } from './domain/location-tree.js';
export { MOST_PARTS, ownShare, type PartInput, partProblems } from './domain/part-rules.js';
export { DISPENSINGS, type Dispensing, packingProblems } from './domain/presentation-rules.js';
export { bothWays, ListQueryDto, listQuery } from './http/list-query.dto.js';
