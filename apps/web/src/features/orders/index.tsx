import './bring-words.js';

export { NewOrderScreen } from './new-order-screen.js';
export { OrderScreen } from './order-screen.js';
export { OrdersScreen } from './orders-screen.js';
