export { CostsScreen } from './costs-screen.js';
export { RestorationScreen } from './restoration-screen.js';
export { RestorationsScreen } from './restorations-screen.js';
export { UsageScreen } from './usage-screen.js';
export { WasteScreen } from './waste-screen.js';
