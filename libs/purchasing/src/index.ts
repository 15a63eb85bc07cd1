export { SendNotices } from './app/send-notices.js';
export { WatchAlerts } from './app/watch-alerts.js';
export { PurchasingModule } from './purchasing.module.js';
