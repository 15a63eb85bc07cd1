export { AddFeeVersion } from './app/add-fee-version.js';
export { AddPlanTerms, type NewPlanTerm } from './app/add-plan-terms.js';
export { CreateFee, type NewFee } from './app/create-fee.js';
export { CreatePlan, type NewPlan } from './app/create-plan.js';
export { type NewBalance, RecordBalance } from './app/record-balance.js';
export { RecordCharges } from './app/record-charges.js';
export { NewChargesDto } from './http/charge.dto.js';
export { PricingModule } from './pricing.module.js';
