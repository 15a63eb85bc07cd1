export { type ReplayedPractice, ReplayPractices } from './app/foresight/replay-practices.js';
export { RunReplay } from './app/foresight/run-replay.js';
export { ApproveOrder } from './app/orders/approve-order.js';
export { CreateOrder } from './app/orders/create-order.js';
export { FollowOrder } from './app/orders/follow-order.js';
export { SendOrder } from './app/orders/send-order.js';
export { SendNotices } from './app/send-notices.js';
export { WatchAlerts } from './app/watch-alerts.js';
export { PurchasingModule } from './purchasing.module.js';
