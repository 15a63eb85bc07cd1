import { Module } from '@nestjs/common';
import { CheckDelivery } from './app/check-delivery.js';
import { CorrectLine } from './app/correct-line.js';
import { CountStock } from './app/count-stock.js';
import { DeliveryChecks } from './app/delivery-checks.js';
import { InvoiceDelivery } from './app/invoice-delivery.js';
import { MoveStock } from './app/move-stock.js';
import { OpenContainer } from './app/open-container.js';
import { ReceiveDelivery } from './app/receive-delivery.js';
import { ReceiveOpeningStock } from './app/receive-opening-stock.js';
import { ReverseDelivery } from './app/reverse-delivery.js';
import { ReverseMovement } from './app/reverse-movement.js';
import { SetKitLotStatus } from './app/set-kit-lot-status.js';
import { SetLotStatus } from './app/set-lot-status.js';
import { StockArrivals } from './app/stock-arrivals.js';
import { ReturnStock, WriteOffStock } from './app/take-out.js';
import { DeliveriesController, LotStatusController } from './http/deliveries.controller.js';
import { CountsController, StockController } from './http/stock.controller.js';
import { DeliveryReadsController, StockReadsController } from './http/stock-reads.controller.js';
import { DeliveryReader } from './queries/delivery-reader.js';
import { LayerReader } from './queries/layer-reader.js';
import { ListDeliveries } from './queries/list-deliveries.js';
import { ListShortfalls } from './queries/list-shortfalls.js';
import { ListStock } from './queries/list-stock.js';
import { MovementReader } from './queries/movement-reader.js';
import { SummariseStock } from './queries/summarise-stock.js';

@Module({
  controllers: [
    StockController,
    CountsController,
    DeliveriesController,
    LotStatusController,
    StockReadsController,
    DeliveryReadsController,
  ],
  providers: [
    CheckDelivery,
    CorrectLine,
    CountStock,
    DeliveryChecks,
    DeliveryReader,
    InvoiceDelivery,
    LayerReader,
    ListDeliveries,
    ListShortfalls,
    ListStock,
    MoveStock,
    MovementReader,
    OpenContainer,
    ReceiveDelivery,
    ReceiveOpeningStock,
    ReturnStock,
    ReverseDelivery,
    ReverseMovement,
    SetKitLotStatus,
    SetLotStatus,
    StockArrivals,
    SummariseStock,
    WriteOffStock,
  ],
  exports: [ReceiveOpeningStock, DeliveryChecks, StockArrivals],
})
export class StockModule {}
