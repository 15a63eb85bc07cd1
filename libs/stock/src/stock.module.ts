import { Module } from '@nestjs/common';
import { CountStock } from './app/count-stock.js';
import { MoveStock } from './app/move-stock.js';
import { OpenContainer } from './app/open-container.js';
import { ReceiveDelivery } from './app/receive-delivery.js';
import { ReverseDelivery } from './app/reverse-delivery.js';
import { ReverseMovement } from './app/reverse-movement.js';
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
    CountStock,
    DeliveryReader,
    LayerReader,
    ListDeliveries,
    ListShortfalls,
    ListStock,
    MoveStock,
    MovementReader,
    OpenContainer,
    ReceiveDelivery,
    ReturnStock,
    ReverseDelivery,
    ReverseMovement,
    SetLotStatus,
    StockArrivals,
    SummariseStock,
    WriteOffStock,
  ],
  exports: [StockArrivals],
})
export class StockModule {}
