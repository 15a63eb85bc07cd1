import { Module } from '@nestjs/common';
import { TypeOrmModule } from '@nestjs/typeorm';
import { AddFeeVersion } from './app/add-fee-version.js';
import { AddPlanTerms } from './app/add-plan-terms.js';
import { ChangeFee } from './app/change-fee.js';
import { ChangePlan } from './app/change-plan.js';
import { CreateFee } from './app/create-fee.js';
import { CreatePlan } from './app/create-plan.js';
import { GetFee } from './app/get-fee.js';
import { GetPlan } from './app/get-plan.js';
import { ListBalances } from './app/list-balances.js';
import { ListFees } from './app/list-fees.js';
import { ListPlans } from './app/list-plans.js';
import { MakeQuote } from './app/make-quote.js';
import { PrintEstimate } from './app/print-estimate.js';
import { RecordBalance } from './app/record-balance.js';
import { FeeEntity } from './db/fee.entity.js';
import { FeePlanEntity } from './db/fee-plan.entity.js';
import { BalancesController } from './http/balances.controller.js';
import { FeesController } from './http/fees.controller.js';
import { PlansController } from './http/plans.controller.js';
import { QuotesController } from './http/quotes.controller.js';

const CREATORS = [AddFeeVersion, AddPlanTerms, CreateFee, CreatePlan, RecordBalance];

@Module({
  imports: [TypeOrmModule.forFeature([FeeEntity, FeePlanEntity])],
  controllers: [BalancesController, FeesController, PlansController, QuotesController],
  providers: [
    ...CREATORS,
    ChangeFee,
    ChangePlan,
    GetFee,
    GetPlan,
    ListBalances,
    ListFees,
    ListPlans,
    MakeQuote,
    PrintEstimate,
  ],
  exports: CREATORS,
})
export class PricingModule {}
