import './bring-words.js';

export { AuditScreen } from './audit-screen.js';
export { ConsumableScreen } from './consumable-screen.js';
export { ConsumablesScreen } from './consumables-screen.js';
export { LocationsScreen } from './locations-screen.js';
export { MessagesScreen } from './messages-screen.js';
export { PeopleScreen } from './people-screen.js';
export { PracticeScreen } from './practice-screen.js';
export { SuppliersScreen } from './suppliers-screen.js';
export { TokensScreen } from './tokens-screen.js';
