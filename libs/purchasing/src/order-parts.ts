import { ApproveOrder } from './app/orders/approve-order.js';
import { ChangeOrder } from './app/orders/change-order.js';
import { CreateOrder } from './app/orders/create-order.js';
import { FollowOrder } from './app/orders/follow-order.js';
import { MailOrder } from './app/orders/mail-order.js';
import { OrderDeliveries } from './app/orders/order-deliveries.js';
import { OrderPapers } from './app/orders/order-papers.js';
import { OrderRulesDesk } from './app/orders/order-rules-desk.js';
import { SendOrder } from './app/orders/send-order.js';
import { OrderRulesController } from './http/orders/order-rules.controller.js';
import { OrderStepsController } from './http/orders/order-steps.controller.js';
import { OrdersController } from './http/orders/orders.controller.js';
import { GetOrder } from './queries/orders/get-order.js';
import { ListOrders } from './queries/orders/list-orders.js';
import { OrderReader } from './queries/orders/order-reader.js';

/** What keeps orders, for the module to put together. */
export const ORDER_CONTROLLERS = [OrdersController, OrderStepsController, OrderRulesController];

export const ORDER_PROVIDERS = [
  ...[GetOrder, ListOrders, OrderReader, OrderPapers, MailOrder],
  ...[CreateOrder, ChangeOrder, ApproveOrder, SendOrder, FollowOrder],
  ...[OrderDeliveries, OrderRulesDesk],
];
