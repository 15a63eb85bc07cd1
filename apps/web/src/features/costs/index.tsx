import './bring-words.js';

export { ChairTimeScreen } from './chair-time/chair-time-screen.js';
export { CostsScreen } from './costs-screen.js';
export { ContributionsScreen } from './earned/contributions-screen.js';
export { SuppliesScreen } from './earned/supplies-screen.js';
export { HabitsScreen } from './habits/habits-screen.js';
export { PricesScreen } from './prices/prices-screen.js';
export { RestorationScreen } from './restoration-screen.js';
export { RestorationsScreen } from './restorations-screen.js';
export { UsageScreen } from './usage-screen.js';
export { VariancesScreen } from './variances/variances-screen.js';
export { WasteScreen } from './waste-screen.js';
