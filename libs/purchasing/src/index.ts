export { PurchasingModule } from './purchasing.module.js';
