import './bring-words.js';

export { ItemScreen } from './item-screen.js';
export { ItemsScreen } from './items-screen.js';
export { OrderingSettingsScreen } from './settings-screen.js';
export { ToOrderScreen } from './to-order-screen.js';
