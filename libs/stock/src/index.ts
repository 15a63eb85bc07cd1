export { CorrectLine } from './app/correct-line.js';
export { CountStock } from './app/count-stock.js';
export {
  counterMovements,
  MOVEMENT_COLUMNS,
  type MovementRow,
  NOT_REVERSED,
} from './app/counter-movements.js';
export {
  DeliveryChecks,
  type DeliveryHandler,
  type DeliveryNote,
  type DeliveryToCheck,
  type OrderedLine,
} from './app/delivery-checks.js';
export { InvoiceDelivery } from './app/invoice-delivery.js';
export { MoveStock } from './app/move-stock.js';
export { OpenContainer } from './app/open-container.js';
export { ReceiveDelivery } from './app/receive-delivery.js';
export { type OpeningLine, ReceiveOpeningStock } from './app/receive-opening-stock.js';
export { ReverseDelivery } from './app/reverse-delivery.js';
export { ReverseMovement } from './app/reverse-movement.js';
export { SetLotStatus } from './app/set-lot-status.js';
export { StockArrivals, type Withdrawal } from './app/stock-arrivals.js';
export { ReturnStock, WriteOffStock } from './app/take-out.js';
export { type CandidateQuery, findCandidates, lockConsumables } from './db/lock-candidates.js';
export {
  applyStockChanges,
  type NewHolding,
  type NewMovement,
  type StockChanges,
  WASTE_REASONS,
} from './db/stock-changes.js';
export { blockedOn, type Candidate, type Sureness } from './domain/candidate.js';
export {
  chooseStock,
  type IssuePlan,
  type IssueRequest,
  type Need,
  type Opening,
  type Take,
} from './domain/choose-stock.js';
export { ReversalDto } from './http/stock.dto.js';
export { MassBalanceDto } from './http/stock-answers.dto.js';
export {
  StockConsumableDto,
  StockLotDto,
  StockPersonDto,
  StockPlaceDto,
  StockSupplierDto,
} from './http/stock-refs.dto.js';
export {
  CONSUMABLE_COLUMNS,
  type ConsumableColumns,
  containing,
  LOT_COLUMNS,
  type LotColumns,
  toConsumable,
  toLot,
  toPlace,
} from './queries/consumable-ref.js';
export { HOLDING_FACTS, type HoldingRow } from './queries/holding-facts.js';
export { BALANCE_COLUMNS, type BalanceColumns, toMassBalance } from './queries/layer-reader.js';
export { instantText, microOf, moneyText, quantityText } from './queries/wire.js';
export { StockModule } from './stock.module.js';
