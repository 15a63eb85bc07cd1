import './bring-words.js';

export { BalancesScreen } from './balances-screen.js';
export { FeeScreen } from './fee-screen.js';
export { FeesScreen } from './fees-screen.js';
export { PlanScreen } from './plan-screen.js';
export { PlansScreen } from './plans-screen.js';
export { RatesScreen } from './rates-screen.js';
