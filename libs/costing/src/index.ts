export { CostingModule } from './costing.module.js';
