import './bring-words.js';
import './bring-delivery-words.js';

export { LabelsScreen } from './labels/labels-screen.js';
export { DeliveriesScreen } from './ledger/deliveries-screen.js';
export { DeliveryScreen } from './ledger/delivery-screen.js';
export { MovementsScreen } from './ledger/movements-screen.js';
export { ReceiveScreen } from './receive/receive-screen.js';
